package report

import (
	"fmt"
	"math"
	"slices"

	"dropsheet/flip"
	"dropsheet/layout"
)

// A glance is for a terminal of the usual size: so many lines at most, of so many letters, the last left to whoever
// writes it for where there is more.
const (
	MostGlanceLines = 13
	GlanceColumns   = 80
)

// Columns before the text of a line: the group's name, and in the group of checks a mark and the check's name.
const (
	GlanceGroupColumns = 8
	GlanceNameColumns  = 11
)

// GlanceLine is a line of a plan at a glance.
type GlanceLine struct {
	Group string // where a group begins, its name; else empty
	Name  string // of a check; else empty
	Text  Text
	Asks  bool // that something should be done about it, which the line says
}

// Glance is the plan in the order of the work: what to print, where it stands, what will be seen, how far that can be
// trusted, light and time where they were asked for, and what needs doing.
func (r *Report) Glance() []GlanceLine {
	var lines []GlanceLine
	add := func(group string, texts ...Text) {
		for _, t := range texts {
			lines = append(lines, GlanceLine{Group: group, Text: t})
			group = ""
		}
	}
	add("PRINT", r.sheetsInShort(), r.boardInShort())
	add("PLACE", r.placeInShort())
	add("SEE", r.seenInShort(), r.frameInShort())
	add("TRUST", r.trustInShort())
	if t := r.lightInShort(); t != nil {
		add("LIGHT", t)
	}
	if t := r.timeInShort(); t != nil {
		add("TIME", t)
	}
	checks := r.checksInShort(MostGlanceLines - len(lines))
	if t := r.nearby(true); t != nil && len(lines)+len(checks) < MostGlanceLines { // where there is room
		near := GlanceLine{Group: "NEARBY", Text: shortest(lineColumns, t, r.nearby(false))}
		lines = slices.Insert(lines, 2, near)
	}
	return append(lines, checks...)
}

// shortest is the first text that fits a line, or the last.
func shortest(columns int, texts ...Text) Text {
	for _, t := range texts {
		if len([]rune(t.String())) <= columns {
			return t
		}
	}
	return texts[len(texts)-1]
}

// lineColumns are left for the text of a line, checkColumns for that of a check.
const (
	lineColumns  = GlanceColumns - GlanceGroupColumns
	checkColumns = lineColumns - GlanceNameColumns
)

// short4 is a length that is told in metres from ten on.
func short4(f Figure) Text {
	if f.Value < 10_000 {
		return say("%s", f)
	}
	return say("%s", Figure{Value: f.Value / 1000, Unit: "m", Decimals: 2})
}

// besides are texts with inches beside their lengths before the same without, for the first that fits; only the latter
// where the plan asks for no inches.
func (r *Report) besides(texts ...Text) []Text {
	if !r.shot.Inches {
		return texts
	}
	var all []Text
	for _, t := range texts {
		all = append(all, r.Beside(t))
	}
	return append(all, texts...)
}

func (r *Report) placeInShort() Text {
	board := short4(length("drop.distance_mm", r.shot.Drop.DistanceMM))
	lens := short4(length("drop.camera_distance_mm", r.shot.Drop.CameraMM))
	return shortest(lineColumns, r.besides(say("board %s behind the %s, %s %s in front of it", board, r.body, r.lens(),
		lens), say("board %s and %s %s from the %s", board, r.lens(), lens, r.body))...)
}

func (r *Report) sheetsInShort() Text {
	p := r.shot.Plan
	b := p.Backdrop
	print := size(length("picture.width_mm", p.Picture.WidthMM), length("picture.height_mm", p.Picture.HeightMM))
	sheets := say("%s, on %s of %s", print, counted("", len(p.Sheets), "sheet", "sheets"), b.Paper.Name)
	if b.Copies > 1 {
		sheets = say("%s, %s copies on %s of %s", print, whole("backdrop.copies", float64(b.Copies), Bare),
			counted("", len(p.Sheets), "sheet", "sheets"), b.Paper.Name)
	}
	lies := say("%s %s", sheets, string(b.Orientation))
	if r.eitherWay {
		return shortest(lineColumns, append(r.besides(say("%s either way: the artwork decides", sheets)),
			say("%s either way", sheets), sheets)...)
	}
	if len(p.Sheets) == 1 {
		return shortest(lineColumns, r.besides(lies, sheets)...)
	}
	return shortest(lineColumns, r.besides(say("%s (%s across, %s down)", lies, whole("backdrop.columns",
		float64(b.Columns), Bare), whole("backdrop.rows", float64(b.Rows), Bare)), lies, sheets)...)
}

// boardInShort says what it is pasted on and how that hangs.
func (r *Report) boardInShort() Text {
	b := r.shot.Backdrop
	least := func(mm float64) Figure { return WholeMM(roundUp(mm+2*layout.BorderMM, boardStepMM)) }
	board := say("on a board of %s", size(least(b.WidthMM), least(b.HeightMM)))
	if b.Uncut {
		board = say("in the paper's middle, uncut")
	}
	hangs := map[flip.Reversal]string{flip.ReversesBoth: "it hangs upside down",
		flip.ReversesX: "it is mirrored left to right", flip.ReversesY: "it is mirrored top to bottom"}[r.shot.Drop.Reverses]
	more := ""
	if r.shot.Drop.Reverses == flip.ReversesBoth {
		more = ", and is not mirrored"
	}
	if turn := r.turn(); turn != nil {
		return say("%s; in the %s it is turned by %s", board, r.body, turn)
	}
	return shortest(lineColumns, r.besides(say("%s; %s%s", board, hangs, more), say("%s; %s", board, hangs), board)...)
}

func (r *Report) seenInShort() Text {
	look := "bulged"
	switch l := r.shot.Picture.Look; l {
	case layout.Bulged:
	case layout.Straight:
		look = "straight, as drawn"
	default:
		look = fmt.Sprintf("%.3g of the way to straight", float64(l))
	}
	return say("the picture fills %s of the %s's radius, %s", fill("picture.fill", r.shot.Picture.Fill), r.body, look)
}

func (r *Report) frameInShort() Text {
	c := r.shot.Camera
	acrossPx := 2 * r.shot.Sight().ApparentRadiusMM() / c.PixelMM()
	return say("the %s is %s of %s wide, in a frame of %s", r.body, whole("", acrossPx, Bare),
		whole("camera.width_px", float64(c.WidthPx), Pixels), size(length("camera.frame_width_mm", c.FrameWidthMM),
			length("camera.frame_height_mm", c.FrameHeightMM)))
}

// trustInShort says what a drop of another size and a board at another distance make of the fill.
func (r *Report) trustInShort() Text {
	if r.shot.Drop.Body == flip.Hanging {
		return r.otherHanging()
	}
	s := r.sensitivity()
	drop := say("%s or %s", share("sensitivity.drop_10_percent_smaller_fill", s.DropSmallerFill),
		share("sensitivity.drop_10_percent_larger_fill", s.DropLargerFill))
	if as := r.shot.Picture.Fill; max(math.Abs(s.DropSmallerFill-as), math.Abs(s.DropLargerFill-as)) <= hardlyShare {
		drop = say("no visible change")
	}
	return say("%s %s off: %s; board %s off: %s or %s", r.body, share("", 0.1), drop, WholeMM(10),
		share("sensitivity.distance_10_mm_less_fill", s.NearerFill),
		share("sensitivity.distance_10_mm_more_fill", s.FurtherFill))
}

// lightInShort says what light the board needs and gets; nil where ISO or exposure are not known.
func (r *Report) lightInShort() Text {
	e := r.exposure()
	if e == nil {
		return nil
	}
	needs := say("the board needs %s at %s", lux("shot.illuminance_needed_lux", e.NeededLux),
		stop("camera.f_number", r.shot.Camera.FNumber))
	if e.Given == nil {
		return say("%s, some %s times direct sun", needs, rounded("exposure.suns", e.Suns, Bare, 2))
	}
	return say("%s, and gets %s", needs, lux("shot.illuminance_given_lux", e.Given.Lux))
}

// timeInShort says how long the drop is in view and how far it smears; nil where its speed is not known.
func (r *Report) timeInShort() Text {
	m := r.motion()
	if m == nil {
		return nil
	}
	view := say("in view for %s", significant("shot.in_view_ms", m.InViewMS, "ms", 3))
	if m.FramesInView > 0 {
		view = say("%s, %s, %s of playback", view, Figure{Path: "shot.frames_in_view", Value: m.FramesInView, Unit: Frames,
			rounds: down}, significant("shot.playback_s", m.PlaybackS, "s", 3))
	}
	if m.Smear == nil {
		return view
	}
	return shortest(lineColumns, say("%s; it smears by %s", view, blur("shot.smear_px", m.Smear.SmearPx)), view)
}
