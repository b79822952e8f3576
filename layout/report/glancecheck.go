package report

import (
	"math"

	"dropsheet/layout/shot"
)

// checksInShort are the checks in at most so many lines: first those that ask for something, in the order of the harm,
// then what is well. Where lines do not suffice for the first, the last names those that are left.
func (r *Report) checksInShort(most int) []GlanceLine {
	var asks, well []GlanceLine
	for _, line := range []GlanceLine{r.checkFrame(), r.checkLight(), r.checkLamps(), r.checkSharp(), r.checkRod(),
		r.checkSmear(), r.checkShape(),
		r.checkBoard(), r.checkTravel(), r.checkGlare(), r.checkHighlights(), r.checkMains(), r.checkSensor(),
		r.checkDetail()} {
		switch {
		case line.Text == nil:
		case line.Asks:
			asks = append(asks, line)
		default:
			well = append(well, line)
		}
	}
	if left := len(asks) - most; left > 0 {
		var names []Text
		for _, l := range asks[most-1:] {
			names = append(names, say(l.Name))
		}
		more := say("%s more: %s, marked ! by --verbose", Figure{Value: float64(left + 1)}, join(names, ", "))
		asks = append(asks[:most-1], GlanceLine{Name: "more", Asks: true, Text: shortest(checkColumns, more,
			say("%s more, marked ! by --verbose", Figure{Value: float64(left + 1)}))})
	}
	all := append(asks, well...)
	all = all[:min(len(all), most)]
	if len(all) > 0 {
		all[0].Group = "CHECK"
	}
	return all
}

// mends is a check that asks for something; the first text that fits the line is told.
func mends(name string, texts ...Text) GlanceLine {
	return GlanceLine{Name: name, Asks: true, Text: shortest(checkColumns, texts...)}
}

// isWell is a check that asks for nothing.
func isWell(name string, texts ...Text) GlanceLine {
	return GlanceLine{Name: name, Text: shortest(checkColumns, texts...)}
}

func (r *Report) checkFrame() GlanceLine {
	if _, cut := r.Fact("frame.cut"); cut {
		return mends("frame", say("it cuts the %s off: take in %s, with --frame-width", r.body,
			enough("", 2*r.shot.Sight().ApparentRadiusMM())))
	}
	return GlanceLine{}
}

func (r *Report) checkLight() GlanceLine {
	e := r.exposure()
	if e == nil || e.Given == nil {
		return GlanceLine{}
	}
	by := Figure{Value: math.Abs(e.Given.OverStops), Unit: Stops, Decimals: 1}
	way := "too light"
	switch {
	case e.Given.Lux == 0:
		return mends("light", say("the lamps give it none: turn them to the board"))
	case by.Number() == "0":
		return isWell("light", say("just what it needs"))
	case e.Given.OverStops < 0:
		way = "too dark"
	}
	short := say("%s %s", by, way)
	w := e.Given.Ways
	switch {
	case w.FNumber == 0 && w.FrameRate == 0 && w.ShutterS == 0 && e.Given.OverStops < 0: // no film is so fast
		times := rounded("exposure.given.ways.lamps_times", w.LampsTimes, Bare, 2)
		times.rounds = up
		return mends("light", say("%s; it needs %s times as much", short, times), short)
	}
	if ways := r.lightWays(); len(ways) > 0 {
		return mends("light", say("%s; it is right at %s", short, ways[0]), short)
	}
	return mends("light", short)
}

func (r *Report) checkLamps() GlanceLine {
	if l := r.light(); l != nil && len(l.InView) > 0 {
		first := l.InView[0]
		lamp := whole("", float64(first.Lamp), Bare)
		if first.Path == shot.ThroughDrop {
			return mends("lamps", say("lamp %s shows in the %s: move it out", lamp, r.body))
		}
		return mends("lamps", say("lamp %s stands in the frame: move it out", lamp))
	}
	if _, turned := r.Fact("lamps.cut"); turned {
		return mends("lamps", say("cut edges face away from them: --light-from %s", string(r.light().Facing.Better)))
	}
	return GlanceLine{}
}

func (r *Report) checkSharp() GlanceLine {
	s := r.sharp()
	within := significant("sharpness.sharp_to_px", s.SharpToPx, Pixels, 3)
	if s.Holds != nil {
		from, to := s.Holds.Marks()
		if from != to {
			from += " to " + to
		}
		return isWell("sharp", say("%s: edge and picture within %s", from, within))
	}
	best := say("%s; best %s, at %s", r.worstBlur(), blur("sharpness.least.blur_px", s.Least.BlurPx).bare(),
		stop("sharpness.least.f_number", s.Least.FNumber))
	if s.Wider == nil {
		return mends("sharp", best)
	}
	mend := enough("sharpness.wider_frame.frame_width_mm", s.Wider.FrameWidthMM)
	return mends("sharp", say("%s; sharp in a frame of %s", best, mend), best)
}

// worstBlur is the largest of the blurs of edge and picture at the plan's own stop and focus.
func (r *Report) worstBlur() Figure {
	own, path := r.ownStop()
	at, in := atFocus(own, r.shot.Camera.Focus)
	centrePx, fillPx := r.shot.PictureBlurs(at.Blur)
	centre, fill := r.blurPaths(path+in, at.Blur)
	worst := blur(path+in+".blur_px.edge_px", at.Blur.EdgePx)
	for _, f := range []Figure{blur(centre, centrePx), blur(fill, fillPx)} {
		if f.Value > worst.Value {
			worst = f
		}
	}
	return worst
}

// checkRod says how far a picture in a rod blurs along it, which no stop mends.
func (r *Report) checkRod() GlanceLine {
	if !r.shot.Drop.Body.Rod() {
		return GlanceLine{}
	}
	own, path := r.ownStop()
	at, in := atFocus(own, r.shot.Camera.Focus)
	alongPx := at.Blur.Centre.SagittalPx
	if alongPx <= r.shot.Camera.SharpToPx {
		return GlanceLine{}
	}
	return mends("rod", say("along it the picture blurs by %s, at any stop", blur(path+in+".blur_px.centre.sagittal_px",
		alongPx)))
}

func (r *Report) checkSmear() GlanceLine {
	m := r.motion()
	if m == nil || m.Smear == nil || m.Smear.SmearPx <= max(m.Smear.BlurPx, r.shot.Camera.SharpToPx) {
		return GlanceLine{}
	}
	return mends("smear", say("%s, more than the blur; %s or shorter mends it", blur("shot.smear_px", m.Smear.SmearPx),
		shutterUnder("motion.smear.shutter_for_blur_s", m.Smear.ShutterForBlurS)))
}

func (r *Report) checkBoard() GlanceLine {
	c := r.coverage()
	switch {
	case !c.Covered():
		return mends("board", say("its edge shows: %s would fill the frame", size(boardNeeds("width", c.Needs.WidthMM),
			boardNeeds("height", c.Needs.HeightMM))))
	case r.showsWhite() && !r.unfilled():
		return mends("paper", say("its white shows in the rim: cut it off or cover it with black"))
	case r.unfilled():
		return mends("board", say("white paper shows round the picture: --background black"))
	case c.PrintEnds != nil:
		return mends("board", say("the print ends in the frame: %s", r.printMend()), say("the print ends in the frame: "+
			"--surround black fills it"))
	}
	return isWell("board", say("no edge of it in the frame"))
}

func (r *Report) checkTravel() GlanceLine {
	t := r.travel()
	if a := t.Asked; a != nil {
		over := significant("travel.asked.travel_mm", a.TravelMM, MM, 4)
		if a.Holds {
			return isWell("travel", say("the picture stays whole over %s each way", over))
		}
		kept := share("travel.asked.fill", a.Fill)
		kept.rounds = down
		return mends("travel", say("over %s it stays whole only to a fill of %s", over, kept))
	}
	way := func(path string, mm *float64, words string) Text {
		switch {
		case mm == nil:
			return nil
		case *mm < leastMM:
			return say("none %s", words)
		}
		return say("%s %s", atMost(path, *mm), words)
	}
	var ways []Text
	asks := false
	for _, w := range []struct {
		path, words string
		mm          *float64
	}{{"travel.across_mm", "sideways", t.AcrossMM}, {"travel.down_mm", "up or down", t.DownMM}} {
		if text := way(w.path, w.mm, w.words); text != nil {
			ways = append(ways, text)
			asks = asks || *w.mm < leastMM
		}
	}
	if len(ways) == 0 {
		return GlanceLine{}
	}
	text := join(ways, ", ")
	if asks {
		if r.shot.Backdrop.Surround != "" {
			return mends("travel", say("%s; a larger --surround-size gives more", text),
				say("%s; --surround-size gives more", text), text)
		}
		return mends("travel", say("%s; --surround gives more", text), text)
	}
	return isWell("travel", text)
}

func (r *Report) checkGlare() GlanceLine {
	if l := r.light(); l != nil {
		for _, g := range l.Glares {
			if g.Seen {
				return mends("glare", say("shiny paper mirrors lamp %s: matt paper, or move it out",
					whole("", float64(g.Lamp), Bare)))
			}
		}
	}
	return GlanceLine{}
}

func (r *Report) checkHighlights() GlanceLine {
	for _, h := range r.highlights() {
		if h.BlowsOut && !r.shot.Lamps[h.Lamp-1].Aim.AtDrop {
			blows := say("lamp %s blows out in the %s", whole("", float64(h.Lamp), Bare), r.body)
			return mends("mirror", say("%s: a shining face of %s would not", blows, enough("", h.HeldFaceMM)), blows)
		}
	}
	return GlanceLine{}
}

func (r *Report) checkMains() GlanceLine {
	if _, swings := r.Fact("mains.swing"); swings {
		return mends("mains", say("lamps on the mains pulse from frame to frame"))
	}
	return GlanceLine{}
}

func (r *Report) checkSensor() GlanceLine {
	c := r.shot.Camera
	if !c.SensorAssumed {
		return GlanceLine{}
	}
	return mends("sensor", say("%s is assumed: give --sensor or --pixel-size", size(length("", c.Sensor.WidthMM),
		length("", c.Sensor.HeightMM))))
}

func (r *Report) checkDetail() GlanceLine {
	f := r.resolution()
	if f.NeededPPI >= shot.DefaultPPI {
		return GlanceLine{}
	}
	return isWell("detail", say("%s to the inch are enough (--ppi auto)",
		whole("resolution.needed_ppi", f.NeededPPI, Pixels)))
}
