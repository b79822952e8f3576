package guide

import (
	"fmt"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// single tells whether one sheet is the whole print, without any seam.
func (j Job) single() bool { return len(j.Plan.Sheets) == 1 }

// hangs says how the board must look when it hangs, and why.
func (j Job) hangs() (short, long string) {
	if !j.Plan.Picture.Plain() {
		return j.hangsFramed()
	}
	switch j.Plan.Drop.Reverses {
	case flip.ReversesBoth:
		return "upside down", "The board looks " + strong("upside down") +
			" when it hangs, and left and right have changed places: it is the picture turned by half a turn. " +
			"That is right. The " + j.body() + " turns everything behind it by half a turn, and so puts the picture upright " +
			"again. Do not turn the board round."
	case flip.ReversesX:
		return "mirrored left to right", "The board looks " + strong("mirrored left to right") +
			" when it hangs: it stands upright, but lettering on it reads backwards. " +
			"That is right. An upright rod changes left and right of everything behind it, and so puts the picture right again."
	case flip.ReversesY:
		return "mirrored top to bottom", "The board looks " + strong("mirrored top to bottom") +
			" when it hangs, like a picture seen in still water: what is up in the picture is down on the board, but left " +
			"stays left. " +
			"That is right. A level rod changes up and down of everything behind it, and so puts the picture right again. " +
			"Do not turn the board round."
	default:
		return "upright", "The board looks upright when it hangs: at this distance the " + j.body() +
			" does not reverse what is behind it."
	}
}

// corner writes the lamp's corner in words, as seen by someone who faces the printed side.
func corner(c layout.Corner) string {
	return vertical(c) + " " + horizontal(c)
}

func horizontal(c layout.Corner) string {
	if c.Left() {
		return "left"
	}
	return "right"
}

func vertical(c layout.Corner) string {
	if c.Top() {
		return "top"
	}
	return "bottom"
}

// darkRim says what of the drop stays dark around the picture.
func (j Job) darkRim() string {
	rim := shot.Of(j.Plan).DarkRim()
	of := " of the " + j.body() + "\u2019s visible radius"
	const room = " It is as dark as the room around the board."
	if j.unfilled() {
		return j.rimBeyondPicture(rim, of)
	}
	switch j.Plan.Drop.Reverses {
	case flip.ReversesX:
		return percent(rim.AcrossShare) + of + " at its left and right edges, where it looks past the backdrop." + room
	case flip.ReversesY:
		return percent(rim.DownShare) + of + " at its upper and lower edges, where it looks past the backdrop." + room
	default:
		if all := percent(rim.AcrossShare); all == percent(rim.DownShare) && all == percent(rim.CornerShare) {
			return fmt.Sprintf("The outermost ring of the %s looks past the backdrop: an even %s%s.", j.body(), all, of) + room
		}
		return fmt.Sprintf("The outermost ring of the %s looks past the backdrop: %s%s at the backdrop\u2019s left and "+
			"right, %s above and below, %s toward the corners.",
			j.body(), percent(rim.AcrossShare), of, percent(rim.DownShare), percent(rim.CornerShare)) + room
	}
}

// hardlyShare is the change of the fill that no one sees: one hundredth of the drop's radius.
const hardlyShare = 0.01

// sensitivity says what becomes of the fill when the drop or the distance are not as planned.
func (j Job) sensitivity() string {
	s, fill := shot.Of(j.Plan).Sensitivity(), j.Plan.Picture.Fill
	off := max(math.Abs(s.DropSmallerFill-fill), math.Abs(s.DropLargerFill-fill))
	body := j.body()
	text := fmt.Sprintf("The print hardly depends on the %s\u2019s size: 10%s%% smaller or larger, the picture fills "+
		"%s or %s of the %s in place of %s.",
		body, noBreak, percent(s.DropSmallerFill), percent(s.DropLargerFill), body, percent(fill))
	switch {
	case percent(s.DropSmallerFill) == percent(fill) && percent(s.DropLargerFill) == percent(fill):
		text = fmt.Sprintf("The print hardly depends on the %s\u2019s size: 10%s%% smaller or larger, the picture still "+
			"fills %s of the %s.", body, noBreak, percent(fill), body)
	case off > hardlyShare:
		text = fmt.Sprintf("The %s\u2019s size matters here: 10%s%% smaller or larger, the picture fills %s or %s of the "+
			"%s in place of %s.",
			body, noBreak, percent(s.DropSmallerFill), percent(s.DropLargerFill), body, percent(fill))
	}
	return text + fmt.Sprintf(" With the board 10%smm nearer it fills %s, 10%smm further %s.", noBreak,
		percent(s.NearerFill), noBreak, percent(s.FurtherFill))
}
