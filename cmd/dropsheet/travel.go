package main

import (
	"fmt"
	"math"
	"strings"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// travelTexts says how far the drop may move off the axis, and what becomes of the travel that was asked for.
func travelTexts(p layout.Plan) []string {
	t := shot.Of(p).Travel()
	texts := append([]string{toleratedText(p, t)}, askedTexts(p, t)...)
	return append(texts, framedText(p))
}

// framedText says how far the drop may move before the frame cuts it off.
func framedText(p layout.Plan) string {
	radiusMM := p.Sight().ApparentRadiusMM()
	across, down := p.Camera.FrameWidthMM/2-radiusMM, p.Camera.FrameHeightMM/2-radiusMM
	turn := p.Drop.Reverses.Turn()
	text := ""
	switch {
	case (turn.ReverseX && across <= 0) || (turn.ReverseY && down <= 0):
		return "the frame cuts the " + noun(p) + " off where it is"
	case !turn.ReverseY:
		text = fmt.Sprintf("the frame holds the whole width of the rod up to %.1f mm to either side", across)
		down = across
	case !turn.ReverseX:
		text = fmt.Sprintf("the frame holds the whole width of the rod up to %.1f mm up or down", down)
		across = down
	default:
		text = fmt.Sprintf("the frame holds the whole drop up to %.1f mm to either side, %.1f mm up or down", across, down)
	}
	if p.Drop.TravelMM > min(across, down) {
		text += fmt.Sprintf(": less than the %.4g mm asked for", p.Drop.TravelMM)
	}
	return text
}

// isNone tells whether a travel is too little to be written down, which is to a tenth of a millimetre.
func isNone(mm *float64) bool { return mm != nil && *mm < 0.1 }

// toleratedText says what travel leaves the dark rim where it is.
func toleratedText(p layout.Plan, t shot.Travel) string {
	var free, none []string
	for _, way := range []struct {
		mm    *float64
		words string
	}{{t.AcrossMM, "to either side"}, {t.DownMM, "up or down"}} {
		switch {
		case way.mm == nil:
			free = append(free, "any distance along itself")
		case isNone(way.mm):
			none = append(none, way.words)
		default:
			free = append(free, fmt.Sprintf("up to %.1f mm %s", math.Floor(*way.mm*10)/10, way.words))
		}
	}
	edge, ends := "the picture's edge", "the board ends where the fill does"
	switch {
	case !p.Filled():
		edge, ends = "the edge of the print", "it ends where the fill does"
	case p.Backdrop.Surround != "":
		edge = "the board's edge"
	}
	comes := edge + " comes into view as soon as the " + noun(p) + " moves"
	stays := fmt.Sprintf("fill %.3f stays free of the dark rim while the %s moves %s", t.HeldFill, noun(p),
		strings.Join(free, ", "))
	switch {
	case len(free) == 0:
		return comes + ": " + ends
	case len(none) > 0:
		return stays + "; " + comes + " " + none[0] + ": " + ends
	}
	return stays
}

// askedTexts says what fill the travel that was asked for leaves, and what would keep all of it.
func askedTexts(p layout.Plan, t shot.Travel) []string {
	a := t.Asked
	switch {
	case a == nil:
		return nil
	case a.Holds:
		return []string{fmt.Sprintf("over %.4g mm each way fill %.3f stays free of the dark rim", a.TravelMM, t.HeldFill)}
	}
	texts := []string{fmt.Sprintf("over %.4g mm each way only fill %.3f stays free of the dark rim", a.TravelMM,
		math.Floor(a.Fill*1000)/1000)}
	if a.NeedsBoard == nil {
		return append(texts, fmt.Sprintf("no board is large enough for %.3f: take a smaller fill or a shorter travel",
			t.HeldFill))
	}
	if r := a.Print; r != nil {
		texts = append(texts, fmt.Sprintf("to keep %.3f print larger: %s", t.HeldFill, askFor(r)))
	}
	if r := a.Surround; r != nil {
		texts = append(texts, "to see a surround in place of the dark room: "+askForSurround(p, r))
	}
	return texts
}
