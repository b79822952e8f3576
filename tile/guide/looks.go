package guide

import (
	"fmt"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/pdf"
)

// look says how the picture appears in the drop, and what that holds for.
func (j Job) look() string {
	body := j.body()
	const holds = " That holds for this distance, this camera distance and this shape of the "
	switch look := j.Plan.Picture.Look; look {
	case layout.Bulged:
		return strong("Bulged") + ": the print is not bent, and the picture looks wrapped round the " + body + "."
	case layout.Straight:
		return strong("Straight") + ": the print is bent beforehand, so that the picture appears in the " + body +
			" just as drawn." + holds + body + "."
	default:
		return strong(look.String()+" of the way from bulged to straight") +
			": the print is bent beforehand by that share." + holds + body + "."
	}
}

// framing lists, by name and words, what part of the picture comes where, as far as that is not the usual.
func (j Job) framing() (facts [][2]string) {
	f := j.Plan.Picture.Framing
	if turn := j.turn(); turn != "" {
		facts = append(facts, [2]string{"Turn", "In the " + j.body() + " the picture is turned by " + strong(turn) + "."})
	}
	if f.OffX != 0 || f.OffY != 0 {
		facts = append(facts, [2]string{"On the axis",
			fmt.Sprintf("In place of the picture\u2019s middle, the point %s of its width from its left and %s of its "+
				"height from its top.",
				strong(percent(0.5+f.OffX)), strong(percent(0.5+f.OffY)))})
	}
	if f.Round {
		facts = append(facts, [2]string{"Round", "Only the circle that touches the picture\u2019s shorter sides is printed."})
	}
	return facts
}

// turn is the turn that was asked for, empty for none.
func (j Job) turn() string {
	deg := math.Mod(j.Plan.Picture.Framing.TurnDeg, 360)
	way := "clockwise"
	if deg < 0 {
		way = "counter-clockwise"
	}
	if deg == 0 {
		return ""
	}
	return short(math.Abs(deg), 2) + "\u00b0 " + way
}

// hangsFramed is hangs for a picture that is bent, or framed in another way than the usual.
func (j Job) hangsFramed() (short, long string) {
	body, turn := j.body(), j.turn()
	if turn != "" {
		turn = ", where it is turned by " + turn + " as asked"
	}
	against, over := " against the picture in the "+body+turn, ""
	switch j.Plan.Drop.Reverses {
	case flip.ReversesNone:
		short, over = "upright", "At this distance the "+body+" does not reverse what is behind it."
	case flip.ReversesBoth:
		short, over = "turned by half a turn", "Half a turn is right: the "+body+
			" turns everything behind it by as much, and so puts the picture right again."
	case flip.ReversesX:
		short, over = "mirrored left to right", "That is right: an upright rod changes left and right of everything "+
			"behind it, and so puts the picture right again."
	case flip.ReversesY:
		short, over = "mirrored top to bottom", "That is right: a level rod changes up and down of everything behind it, "+
			"and so puts the picture right again."
	}
	long = "The board looks " + strong(short) + against + ". " + over
	if j.Plan.Picture.Look != layout.Bulged {
		short += " and bent"
		long += " It looks bent too, drawn out toward its edge: that is what the " + body + " squeezes together, " +
			j.until() + "."
	}
	return short, long + " Do not turn the board round."
}

// until says what squeezing leaves of a bent print.
func (j Job) until() string {
	if j.Plan.Picture.Look == layout.Straight {
		return "until it is straight"
	}
	return "until it bulges only as much as asked"
}

// rimBeyondPicture says what of the drop looks past a picture that leaves some of its board unprinted. of
// names what the shares are of.
func (j Job) rimBeyondPicture(rim shot.DarkRim, of string) string {
	const shows = " What it sees there is white where the paper goes on beyond the picture, and elsewhere as dark as " +
		"the room around the board."
	widest, narrowest := rim.AcrossShare, rim.CornerShare
	where := ""
	switch j.Plan.Drop.Reverses {
	case flip.ReversesX:
		narrowest, where = widest, " at its left and right edges"
	case flip.ReversesY:
		widest, narrowest, where = rim.DownShare, rim.DownShare, " at its upper and lower edges"
	}
	text := "The outermost part of the " + j.body() + " looks past the picture" + where + ": " + percent(widest) + of
	if percent(widest) != percent(narrowest) {
		text += " where that is widest, " + percent(narrowest) + " where it is narrowest"
	}
	return text + "." + shows
}

// looks tells whether there are views of both looks to show.
func (j Job) looks() bool { return j.Looks[0] != nil && j.Looks[1] != nil }

// bothLooks shows the picture bulged and straight, side by side, and says which is printed.
func (b *book) bothLooks() {
	const gapMM, largestMM, underMM = 8.0, 82.0, 2.0
	body, look := b.job.body(), b.job.Plan.Picture.Look
	b.intro("The same picture in the " + body + " twice, as the camera sees it.")
	side := min((b.geo.fullMM()-gapMM)/2, largestMM)
	words := [2]string{
		strong("bulged") + ": printed without bending, it looks wrapped round the " + body + ".",
		strong("straight") + ": printed bent, it appears just as drawn.",
	}
	printed := -1
	switch look {
	case layout.Bulged:
		printed = 0
	case layout.Straight:
		printed = 1
	}
	if printed >= 0 {
		words[printed] += " " + strong("This job prints this one.")
	}
	high := 0.0
	for _, text := range words {
		high = max(high, b.blockMM(bodyStyle, side, text))
	}
	b.figure(side+underMM+high, func(box layout.Rect) {
		for i, view := range b.job.Looks {
			at := layout.Rect{XMM: box.XMM + float64(i)*(side+gapMM), YMM: box.YMM, WidthMM: side, HeightMM: side}
			b.placeImage(at, view, photoPPI)
			b.Frame(at, lookPen(i == printed))
			b.block(bodyStyle, at.XMM, at.BottomMM()+underMM, side, words[i])
		}
	}, "")
	if printed < 0 {
		b.para("This job prints neither, but a share between them: " + strong(look.String()) +
			", where 0 is bulged and 1 is straight.")
	}
	b.topic("Why", func(b *book) {
		b.para("The " + body + " shows its middle largest and squeezes all toward its edge" + b.job.edgeWays() +
			". A print that is drawn out there by as much cancels that.")
	})
	// Advice (common practice, no source).
	b.topic("Which", func(b *book) {
		b.para("Bulged shows at once that there is a " + body + ". Straight suits lettering, faces, buildings and " +
			"whatever else must keep its shape.")
	})
	b.topic("What it holds for", func(b *book) {
		b.para("A bent print is right for the distance and the camera distance that it was made for, and for that " +
			"shape of the " + body + ". A little off them, straight lines bend a little. A print that is not bent bulges " +
			"much the same wherever it stands.")
	})
	b.topic("To change it", func(b *book) {
		b.para("Make the job again with " + strong("--look bulged") + ", " + strong("--look straight") +
			" or a share between, such as " + strong("--look 0.5") + ".")
	})
}

// edgeWays says which edges those are, of a rod.
func (j Job) edgeWays() string {
	if j.rod() {
		return ", across itself but not along"
	}
	return ""
}

// lookPen frames the look that is printed, or the other.
func lookPen(printed bool) pdf.Pen {
	if printed {
		return pen(accent, 1.2)
	}
	return pen(grey, 0.2)
}
