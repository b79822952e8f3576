package seammap

import (
	"fmt"
	"strconv"

	"dropsheet/flip"
	"dropsheet/layout"
)

// lengthText writes a length with its unit, 41.2 mm, not to be broken between them.
func lengthText(mm float64) string { return strconv.FormatFloat(mm, 'f', 1, 64) + "\u00a0mm" }

// sizeText writes a size with its unit: 889.2 × 592.8 mm.
func sizeText(widthMM, heightMM float64) string {
	return strconv.FormatFloat(widthMM, 'f', 1, 64) + " × " + lengthText(heightMM)
}

// bodyName is what the map calls the refracting body.
func bodyName(b flip.Body) string {
	if b == flip.Ball {
		return "drop"
	}
	return "rod"
}

// setupText tells the job in a line.
func setupText(p layout.Plan) string {
	body := "Drop"
	switch p.Drop.Body {
	case flip.UprightRod:
		body = "Upright rod"
	case flip.LevelRod:
		body = "Level rod"
	}
	short := func(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
	body += " of " + short(p.Drop.DiameterMM) + " mm"
	if d := p.Sight().Drop; d.Oblate() {
		body = "Drop " + short(2*d.RadiusMM()) + " mm wide and " + short(2*d.HalfHeightMM()) + " mm high"
	}
	return fmt.Sprintf("%s, index %s, backdrop %s mm behind it, camera %s mm in front of it",
		body, short(p.Drop.Index), short(p.Drop.DistanceMM), short(p.Drop.CameraMM))
}

// titleText is the map's title.
func titleText(p layout.Plan) string {
	if len(p.Seams) == 0 {
		return "Where the " + bodyName(p.Drop.Body) + " looks on the board"
	}
	return "Where the seams fall, and how plainly they show"
}

// showsText says what the picture of the drop shows.
func showsText(p layout.Plan) string {
	switch {
	case len(p.Seams) == 0:
		return "the picture as it shows, turned right"
	case p.Picture.Framing.TurnDeg != 0:
		return "picture and seams as they show, names where they fit"
	case p.Drop.Body != flip.Ball:
		return "picture turned right, seams squeezed across, names where they fit"
	default:
		return "picture upright, seams bent, names where they fit"
	}
}

// boardText tells the board in a line.
func boardText(p layout.Plan) string {
	b, sheets := p.Backdrop, "one sheet"
	switch n := len(p.Sheets); {
	case n < b.Columns*b.Rows:
		sheets = fmt.Sprintf("%d of %d × %d cells with a sheet", n, b.Columns, b.Rows)
	case n > 1:
		sheets = fmt.Sprintf("%d × %d = %d sheets", b.Columns, b.Rows, n)
	}
	return fmt.Sprintf("%s, %s of %s", sizeText(b.WidthMM, b.HeightMM), sheets, b.Paper.Name)
}

// hangsText says how the board looks as it hangs, and that the body undoes it.
func hangsText(p layout.Plan) string {
	if p.Picture.Framing.TurnDeg != 0 {
		return hangsTurnedText(p)
	}
	switch p.Drop.Reverses {
	case flip.ReversesBoth:
		return "The board hangs turned by half a turn, so it looks upside down. The drop turns the picture upright."
	case flip.ReversesX:
		return "The board hangs with left and right exchanged, so its lettering reads backwards. The rod puts the " +
			"picture right."
	case flip.ReversesY:
		return "The board hangs with top and bottom exchanged, so it looks upside down and mirrored. The rod puts the " +
			"picture right."
	default:
		return "So close to the board the body turns nothing over: the board hangs as the picture is."
	}
}

// hangsTurnedText is hangsText for a picture that shows turned, as asked.
func hangsTurnedText(p layout.Plan) string {
	turned := strconv.FormatFloat(p.Picture.Framing.TurnDeg, 'g', -1, 64) + "°"
	switch p.Drop.Reverses {
	case flip.ReversesX:
		return "The board hangs with left and right exchanged. The rod puts them right, and shows the picture turned by " +
			turned + " as asked."
	case flip.ReversesY:
		return "The board hangs with top and bottom exchanged. The rod puts them right, and shows the picture turned by " +
			turned + " as asked."
	default:
		return "The board hangs turned by half a turn. The drop turns it back, and shows the picture turned by " + turned +
			" as asked."
	}
}

// lookText says how the print is bent; nothing when it is not.
func lookText(p layout.Plan) string {
	switch body := bodyName(p.Drop.Body); p.Picture.Look {
	case layout.Bulged:
		return ""
	case layout.Straight:
		return "The print is bent beforehand, so that the " + body + " shows the picture straight."
	default:
		return "The print is bent beforehand, so that the " + body + " shows the picture " + p.Picture.Look.String() +
			" of the way from bulged to straight."
	}
}

// bendsText says what the body does to the seams.
func bendsText(p layout.Plan) string {
	if len(p.Seams) == 0 {
		return "One sheet holds the whole picture: there is no seam."
	}
	if p.Drop.Body != flip.Ball {
		return "Across the rod the seams crowd toward its edges. Along it nothing is squeezed, so only a short stretch " +
			"of the board shows here."
	}
	return "The drop bends the seams round its middle, where it shows them largest, and crowds them toward its rim."
}
