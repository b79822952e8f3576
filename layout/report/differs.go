package report

import (
	"math"
	"slices"

	"dropsheet/layout/shot"
)

// Change is a figure that is not what it was, under the name that JSON has for it.
type Change struct {
	Path string  `json:"path"`
	Was  float64 `json:"was"`
	Is   float64 `json:"is"`
}

// Since tells what differs from a plan that this one came from, in what decides print and shot; nothing where they are
// told alike.
func (r *Report) Since(was *Report) []Fact {
	var facts []Fact
	tell := func(key string, is, before Text, more ...Text) {
		if is.String() != before.String() {
			text := say("%s -> %s", before, is)
			if more = slices.DeleteFunc(more, func(t Text) bool { return len(t) == 0 }); len(more) > 0 {
				text = say("%s: %s", text, join(more, ", "))
			}
			facts = append(facts, Fact{Key: "differs." + key, Text: text})
		}
	}
	tell("body", r.bodyAtLength(), was.bodyAtLength())
	tell("distance", r.boardAway(), was.boardAway())
	tell("print", r.printed(), was.printed(), larger(r.shot.Picture.WidthMM, was.shot.Picture.WidthMM))
	tell("fill", r.filled(), was.filled())
	tell("sheets", r.onSheets(), was.onSheets())
	tell("board", r.wholeBoard(), was.wholeBoard())
	tell("look", r.looks(), was.looks())
	softer := r.softer(was)
	tell("stop", r.stopped(), was.stopped(), r.lighter(was), softer)
	if len(facts) > 0 && facts[len(facts)-1].Key == "differs.stop" {
		softer = nil // told there
	}
	tell("frame", r.framedDrop(), was.framedDrop(), softer)
	tell("focus", r.focused(), was.focused())
	tell("exposure", r.needs(), was.needs())
	tell("motion", r.smears(), was.smears())
	if len(facts) > 0 {
		facts[0].Name = "differs"
	}
	return facts
}

// Changes is the same for programs: the figures that differ.
func (r *Report) Changes(was *Report) []Change {
	before := map[string]float64{}
	for _, f := range was.decides() {
		before[f.Path] = f.Value
	}
	changes := []Change{}
	for _, f := range r.decides() {
		if v, ok := before[f.Path]; ok && math.Abs(v-f.Value) > 1e-9*math.Abs(v) {
			changes = append(changes, Change{f.Path, v, f.Value})
		}
	}
	return changes
}

// decides are the figures that Since tells of.
func (r *Report) decides() (all []Figure) {
	for _, t := range []Text{r.bodyAtLength(), r.boardAway(), r.printed(), r.filled(), r.onSheets(), r.wholeBoard(),
		r.framedDrop(), r.stopped(), r.needs(), r.smears()} {
		all = append(all, t.Figures()...)
	}
	return slices.DeleteFunc(all, func(f Figure) bool { return f.Path == "" })
}

func (r *Report) boardAway() Text {
	return say("board %s away, %s %s", length("drop.distance_mm", r.shot.Drop.DistanceMM), r.lens(),
		length("drop.camera_distance_mm", r.shot.Drop.CameraMM))
}

func (r *Report) printed() Text {
	return say("print %s", size(length("picture.width_mm", r.shot.Picture.WidthMM),
		length("picture.height_mm", r.shot.Picture.HeightMM)))
}

func (r *Report) filled() Text { return say("fill %s", fill("picture.fill", r.shot.Picture.Fill)) }

func (r *Report) onSheets() Text {
	b := r.shot.Backdrop
	text := say("%s of %s, %s across, %s down", counted("", len(r.shot.Sheets), "sheet", "sheets"), b.Paper.Name,
		whole("backdrop.columns", float64(b.Columns), Bare), whole("backdrop.rows", float64(b.Rows), Bare))
	if b.Printer != nil {
		text = say("%s on %s", text, Printer(*b.Printer))
	}
	return text
}

// wholeBoard is the board with what surrounds the picture.
func (r *Report) wholeBoard() Text {
	b := r.shot.Backdrop
	if b.Board() == r.shot.PictureOnBoard() {
		return say("nothing round the picture")
	}
	surround := "bare paper"
	if b.Surround != "" {
		surround = b.Surround.Word()
	}
	return say("%s round the picture, to %s", surround, size(length("backdrop.width_mm", b.WidthMM),
		length("backdrop.height_mm", b.HeightMM)))
}

func (r *Report) looks() Text {
	p := r.shot.Picture
	text := say("%s, fit %s", p.Look.String(), string(p.Fit))
	for _, f := range r.framing() {
		if f.Name != "" {
			text = say("%s, %s: %s", text, f.Name, f.Text)
		}
	}
	return text
}

func (r *Report) framedDrop() Text {
	c := r.shot.Camera
	return say("frame %s wide, %s of %s", length("camera.frame_width_mm", c.FrameWidthMM), say("the %s %s", r.body,
		whole("", 2*r.shot.Sight().ApparentRadiusMM()/c.PixelMM(), Bare)), whole("camera.width_px", float64(c.WidthPx),
		Pixels))
}

func (r *Report) stopped() Text { return say("%s", stop("camera.f_number", r.shot.Camera.FNumber)) }

func (r *Report) focused() Text { return say("focus %s", string(r.shot.Camera.Focus)) }

// lighter tells what another stop does to the light.
func (r *Report) lighter(was *Report) Text {
	by := shot.ExposureStops(was.shot.Camera.FNumber, r.shot.Camera.FNumber)
	way := "lighter"
	if by < 0 {
		way = "darker"
	}
	f := Figure{Value: math.Abs(by), Unit: Stops, Decimals: 1}
	if f.Number() == "0" {
		return nil
	}
	return say("%s %s", f, way)
}

// softer tells what it does to the worse of the blurs of edge and picture, in frame pixels.
func (r *Report) softer(was *Report) Text {
	by := r.worstPx() - was.worstPx()
	way := "softer"
	if by < 0 {
		way = "sharper"
	}
	f := blur("", math.Abs(by))
	if f.Number() == "0" {
		return nil
	}
	return say("%s %s", f, way)
}

// worstPx is the worse of the blurs of edge and picture at the plan's own stop and focus.
func (r *Report) worstPx() float64 {
	own, _ := r.ownStop()
	at, _ := atFocus(own, r.shot.Camera.Focus)
	return r.shot.WorstPx(at.Blur)
}

// larger tells how much larger or smaller a length has become.
func larger(is, was float64) Text {
	by := Figure{Value: math.Abs(is/was - 1), Unit: Percent, Decimals: 1}
	switch {
	case by.Number() == "0":
		return nil
	case is < was:
		return say("%s smaller", by)
	}
	return say("%s larger", by)
}

// needs tells of the light that the board needs and gets, where that is known.
func (r *Report) needs() Text {
	e := r.exposure()
	if e == nil {
		return say("light not asked for")
	}
	text := say("%s needed", lux("shot.illuminance_needed_lux", e.NeededLux))
	if g := e.Given; g != nil {
		text = say("%s, %s given", text, lux("shot.illuminance_given_lux", g.Lux))
	}
	return text
}

// smears tells how far the drop moves while a frame is exposed, where that is known.
func (r *Report) smears() Text {
	m := r.motion()
	if m == nil || m.Smear == nil {
		return say("smear not known")
	}
	return say("smear %s", blur("shot.smear_px", m.Smear.SmearPx))
}
