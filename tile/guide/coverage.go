package guide

import (
	"fmt"
	"math"
	"strings"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// surrounded tells whether the board goes on beyond the picture.
func (j Job) surrounded() bool {
	if !j.Plan.Picture.Plain() {
		return j.Plan.Backdrop.Surround != ""
	}
	return j.Plan.PictureOnBoard() != j.Plan.Backdrop.Board()
}

// unfilled tells whether nothing is printed in what the picture leaves of the board.
func (j Job) unfilled() bool { return !j.Plan.Picture.Plain() && j.Plan.Backdrop.Surround == "" }

// surround says what fills the board beyond the picture.
func (j Job) surround() string {
	if j.Plan.Backdrop.Surround == layout.Stretch {
		return "a surround in which its edge goes on"
	}
	return "a surround of the colour " + string(j.Plan.Backdrop.Surround)
}

// coverage says what the frame sees of the board, and how far the drop may fall off the axis.
func (b *book) coverage() {
	p := b.job.Plan
	c := b.found.coverage
	text := "The frame is " + strong(size(p.Camera.FrameWidthMM, p.Camera.FrameHeightMM)) + " at the " + b.job.body() +
		", and past it " +
		strong(size(c.Sees.WidthMM, c.Sees.HeightMM)) + " at the board. "
	if c.Covered() {
		text += "No edge of the board shows."
	} else {
		text += "The board\u2019s edge shows " + edges(p.Camera, c) + "; a board of " +
			strong(size(math.Ceil(c.Needs.WidthMM), math.Ceil(c.Needs.HeightMM))) + " would fill the frame."
	}
	if c.PrintEnds != nil {
		text += b.job.printEnds(*c.PrintEnds)
	}
	b.para(text + " " + b.job.travelText(b.travel))
}

// printEnds says that what is printed does not fill the frame.
func (j Job) printEnds(ends shot.PrintEnds) string {
	if ends.Share == 0 {
		return " The edge of the print shows as a blur."
	}
	return fmt.Sprintf(" The print ends inside the frame: %s of what that sees past the %s is not printed.",
		strong(percent(ends.Share)), j.body())
}

// edges says where the board's edges show.
func edges(camera layout.Camera, c shot.Coverage) string {
	var parts []string
	for i := 0; i < len(c.Edges); i += 2 { // opposite edges stand together
		across, px := "left and right", camera.WidthPx
		if c.Edges[i].Side == "top" {
			across, px = "top and bottom", camera.HeightPx
		}
		if in := c.Edges[i].AtPx; in < 0 {
			parts = append(parts, "as a blur at "+across)
		} else {
			parts = append(parts, fmt.Sprintf("at %s, %.0f of %d pixels in", across, in, px))
		}
	}
	return strings.Join(parts, ", and ")
}

// leastShownMM is the least length that the guide writes as other than none.
const leastShownMM = 0.1

// travelText says how far the drop may be off the axis.
func (j Job) travelText(t shot.Travel) string {
	var moves []string
	free, none := 0, false // how many ways it may move, and whether there is one that it may not
	for _, m := range []struct {
		mm    *float64
		words string
	}{{t.AcrossMM, "to either side"}, {t.DownMM, "up or down"}} {
		switch {
		case m.mm == nil:
			moves = append(moves, "any distance along itself")
			free++
		case *m.mm < leastShownMM:
			moves = append(moves, strong("not at all")+" "+m.words)
			none = true
		default:
			moves = append(moves, strong(short(math.Floor(*m.mm*10)/10, 1)+noBreak+"mm")+" "+m.words)
			free++
		}
	}
	edge, ends := "The picture\u2019s edge", "the board ends"
	switch {
	case !j.Plan.Filled():
		edge, ends = "The edge of the print", "the print ends"
	case j.Plan.Backdrop.Surround != "":
		edge = "The board\u2019s edge"
	}
	text := fmt.Sprintf("The %s may be off the axis %s before the dark rim comes inside a fill of %s.", j.body(),
		strings.Join(moves, ", and "), percent(t.HeldFill))
	if free == 0 {
		text = edge + " comes into view " + strong("as soon as the "+j.body()+" is off the axis") + ": " + ends +
			" where the fill does."
	} else if none {
		text += " There " + ends + " where the fill does."
	}
	if a := t.Asked; a != nil && !a.Holds {
		text += fmt.Sprintf(" Over the %s that you asked for, %s stays free of it.", short(a.TravelMM, 2)+noBreak+"mm",
			percent(a.Fill))
	}
	return text
}
