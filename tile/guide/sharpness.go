package guide

import (
	"fmt"
	"math"
	"strconv"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// sharpness says what each stop does to sharpness and light, and what to do about both.
func (b *book) sharpness() {
	p, body := b.job.Plan, b.job.body()
	s := b.sharp
	own := ownStop(s)
	b.intro("The " + body + "\u2019s edge and the picture in it lie at two distances from the lens, so no focus makes " +
		"both sharp. Closing the aperture helps, and costs light.")
	b.figure(b.planesMM(), func(box layout.Rect) { b.planes(box, own.Best.FocusMM) }, "")

	b.together(func(b *book) {
		b.side("Blur")
		b.para("How large a point is drawn, in pixels of the frame, at the best focus, diffraction included. Light is in " +
			"stops, against the plan\u2019s " +
			strong(shot.StopMark(own.FNumber)) + "." + b.alongRod(own))
		b.table(b.stopTable(s))
		b.note(b.verdict(s))
	})
	b.topic("Focus", func(b *book) {
		b.para(fmt.Sprintf("Focus on something thin held where the %s will be, then move the camera back by %s. At %s "+
			"the edge\u2019s blur is then %s and the picture\u2019s %s; with the edge in focus the picture\u2019s is %s, "+
			"with the picture in focus the edge\u2019s %s.",
			body, strong(short(p.Drop.CameraMM-own.Best.FocusMM, 2)+noBreak+"mm"), shot.StopMark(own.FNumber),
			tenthPx(own.Best.Blur.EdgePx), pixels(own.Best.Blur.Centre.TangentialPx),
			tenthPx(own.Edge.Blur.Centre.TangentialPx), tenthPx(own.Picture.Blur.EdgePx)))
	})
	b.topic("What helps", func(b *book) {
		b.bullet("A wider frame: all is drawn smaller, the blur too. A longer lens from further off does " + strong("not") +
			" help: in a frame of the same width the blur is the same.")
		b.bullet("More light: each stop further closed needs twice as much, or " + b.halfRate() + ".")
		b.bullet("Lamps on the mains pulse at twice its frequency. " + pulses(s.Mains))
	})
}

// ownStop is the line of the plan's own stop, which the table always holds.
func ownStop(s shot.Sharpness) (own shot.StopLine) {
	for _, stop := range s.Stops {
		if stop.Current {
			own = stop
		}
	}
	return own
}

// alongRod says what no stop can do for a rod; nothing for a ball.
func (b *book) alongRod(own shot.StopLine) string {
	if b.job.Plan.Drop.Body == flip.Ball {
		return ""
	}
	return " Edge, centre and fill count across the rod. " + strong("Along") +
		" the rod nothing is bent, and the picture is seen at nearly its true place, far behind: there its blur is " +
		pixels(own.Best.Blur.Centre.SagittalPx) + " at " + shot.StopMark(own.FNumber) +
		". A picture in a rod is never sharp both ways; lines along the rod come out best."
}

// stopTable is a line for every stop.
func (b *book) stopTable(s shot.Sharpness) table {
	p := b.job.Plan
	rod, rate := p.Drop.Body != flip.Ball, p.Camera.FrameRate > 0
	heads := []string{"stop", "light"}
	if rate {
		heads = append(heads, "frames/s")
	}
	heads = append(heads, "edge", "centre", "at fill")
	if rod {
		heads = append(heads, "along rod")
	}
	heads = append(heads, "backdrop")
	var t table
	for i, head := range heads {
		t.columns = append(t.columns, column{head, i > 0, b.geo.textWidth/float64(len(heads)) - 2*cellPadMM})
	}
	for _, stop := range s.Stops {
		blur := stop.Best.Blur
		centre, fill := p.PictureBlurs(blur)
		cells := []string{shot.StopMark(stop.FNumber), signed(stop.ExposureStops)}
		if stop.Current {
			cells[0] += " (plan)"
		}
		if rate {
			cells = append(cells, rateOf(stop.FrameRate))
		}
		cells = append(cells, tenthPx(blur.EdgePx), tenthPx(centre), tenthPx(fill))
		if rod {
			cells = append(cells, tenthPx(blur.Centre.SagittalPx))
		}
		t.rows = append(t.rows, append(cells, tenthPx(blur.BackdropPx)))
	}
	return t
}

// verdict says whether any stop is good enough, and if not which frame would be.
func (b *book) verdict(s shot.Sharpness) string {
	least := fmt.Sprintf(" The least blur of both is %s, at %s.", pixels(s.Least.BlurPx), shot.StopMark(s.Least.FNumber))
	within := short(s.SharpToPx, 2) + noBreak + "pixels"
	if s.Holds != nil {
		from, to := s.Holds.Marks()
		hold := from + " holds"
		if from != to {
			hold = from + " to " + to + " hold"
		}
		return strong(hold+" edge and picture within "+within+".") + least
	}
	text := strong("No stop holds edge and picture within "+within+".") + least
	if w := s.Wider; w != nil {
		text += fmt.Sprintf(" A frame %s wide would hold them, at %s, the %s %.0f%spixels wide in it; so would this one, "+
			"shown smaller.",
			length(math.Ceil(w.FrameWidthMM)), shot.StopMark(w.FNumber), b.job.body(), w.DropPx, noBreak)
	}
	return text
}

// halfRate is what gains a stop without more light.
func (b *book) halfRate() string {
	if rate := b.job.Plan.Camera.FrameRate; rate > 0 {
		return "half the frame rate, " + rateOf(rate/2) + " in place of " + rateOf(rate) + " frames a second"
	}
	return "half the frame rate"
}

// pulses says how lamps on the mains look at the plan's frame rate, and what to do about them (common practice).
func pulses(mains []shot.Mains) string {
	const remedy = "Take lamps on direct current or high frequency."
	if len(mains) == 0 {
		return "At more frames a second brightness swings. " + remedy
	}
	a, c := mains[0], mains[1]
	if a.FramesPerPulse > 1 {
		return fmt.Sprintf("At your frame rate a pulse lasts %.3g frames on %g%sHz, %.3g on %g%sHz: brightness swings. ",
			a.FramesPerPulse, a.Hz, noBreak, c.FramesPerPulse, c.Hz, noBreak) + remedy
	}
	return fmt.Sprintf("At your frame rate a frame lasts %.3g pulses on %g%sHz, %.3g on %g%sHz: brightness is steady "+
		"where the shutter stays open for whole pulses.",
		1/a.FramesPerPulse, a.Hz, noBreak, 1/c.FramesPerPulse, c.Hz, noBreak)
}

// tenthPx writes a blur for tables.
func tenthPx(px float64) string {
	if px < 99.95 {
		return strconv.FormatFloat(px, 'f', 1, 64)
	}
	return strconv.FormatFloat(px, 'f', 0, 64)
}

// pixels writes a blur for running text.
func pixels(px float64) string { return tenthPx(px) + noBreak + "pixels" }

// signed writes stops with their sign.
func signed(stops float64) string {
	if text := short(stops, 1); text == "0" || text == "-0" {
		return "0"
	} else if stops > 0 {
		return "+" + text
	} else {
		return "\u2013" + text[1:]
	}
}

// rateOf writes a frame rate: whole frames between a hundred and ten million, else three figures.
func rateOf(rate float64) string {
	if rate < 100 || rate >= 1e7 {
		return strconv.FormatFloat(rate, 'g', 3, 64)
	}
	return strconv.FormatFloat(rate, 'f', 0, 64)
}
