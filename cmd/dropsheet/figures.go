package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// reverses says in words what a drop does.
var reverses = map[flip.Reversal]string{
	flip.ReversesBoth: "both ways: half a turn, nothing mirrored; the print hangs upside down",
	flip.ReversesX:    "left and right; the print hangs mirrored sideways",
	flip.ReversesY:    "up and down; the print hangs mirrored top to bottom",
}

// noun is the word for what refracts.
func noun(p layout.Plan) string {
	if p.Drop.Body == flip.Ball {
		return "drop"
	}
	return "rod"
}

// writeFigures writes a plan for people.
func writeFigures(w io.Writer, p layout.Plan) error {
	var b strings.Builder
	line := func(what, format string, args ...any) {
		fmt.Fprintf(&b, "%-12s %s\n", what, fmt.Sprintf(format, args...))
	}
	drop := noun(p)
	line(drop, "%s, %s, of %s (index %.5g), focal length %.2f mm", p.Drop.Body, sizeOf(p), p.Drop.Material, p.Drop.Index,
		p.Drop.FocalLengthMM)
	if m, ok := flip.MaterialByName(p.Drop.Material); ok {
		line("", "index at %g °C and %g nm: %s", m.TemperatureC, m.WavelengthNM, m.Source)
	}
	line("reverses", "%s", reverses[p.Drop.Reverses])
	line("distance", "%.1f mm from the %s's centre to the backdrop; the camera's entrance pupil %.1f mm before that",
		p.Drop.DistanceMM, drop, p.Drop.CameraMM)
	line("fill", "%.3f of the %s's visible radius", p.Picture.Fill, drop)
	line("reach", "%.1f mm from the axis (the near-axis formula says %.1f mm: never size a print by it)",
		p.Picture.ReachMM, p.Picture.NearAxisReachMM)
	for _, l := range lookLines(p) {
		line(l[0], "%s", l[1])
	}
	line("print", "%.1f x %.1f mm, fit %s", p.Picture.WidthMM, p.Picture.HeightMM, p.Picture.Fit)
	line("dark rim", "%s", darkRim(p))
	b0 := p.Backdrop
	line("sheets", "%d of %s, %s: %d across, %d down%s; lap %g mm, %s", len(p.Sheets), b0.Paper.Name, b0.Orientation,
		b0.Columns, b0.Rows, bareText(p), b0.LapMM, marginText(b0))
	for _, l := range printerLines(b0) {
		line(l[0], "%s", l[1])
	}
	s := shot.Of(p).Sensitivity()
	line("sensitivity", "%s 10 %% smaller: fill %.3f, larger: %.3f; backdrop 10 mm nearer: %.3f, further: %.3f", drop,
		s.DropSmallerFill, s.DropLargerFill, s.NearerFill, s.FurtherFill)
	line("frame", "%.1f x %.1f mm at the %s, %d x %d pixels, of which it takes %.0f across%s", p.Camera.FrameWidthMM,
		p.Camera.FrameHeightMM, drop,
		p.Camera.WidthPx, p.Camera.HeightPx, 2*p.Sight().ApparentRadiusMM()/p.Camera.PixelMM(), framing(p))
	for _, l := range resolutionLines(p) {
		line(l[0], "%s", l[1])
	}
	for _, l := range coverageLines(p) {
		line(l[0], "%s", l[1])
	}
	for _, l := range sharpnessLines(p) {
		line(l[0], "%s", l[1])
	}
	for _, l := range lightLines(p) {
		line(l[0], "%s", l[1])
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// smallInFrame is the share of the frame's height under which a drop is a speck that a closer frame would
// serve (common practice, no source).
const smallInFrame = 0.25

// framing says when the frame does not suit the drop.
func framing(p layout.Plan) string {
	across := 2 * p.Sight().ApparentRadiusMM()
	turn := p.Drop.Reverses.Turn()
	switch {
	case (turn.ReverseX && across > p.Camera.FrameWidthMM) || (turn.ReverseY && across > p.Camera.FrameHeightMM):
		return fmt.Sprintf("; the frame cuts it off: see at least %.1f mm each way, with a shorter --lens or a wider "+
			"--frame-width", across)
	case across < smallInFrame*p.Camera.FrameHeightMM:
		return "; a longer --lens, a shorter --camera-distance or a narrower --frame-width shows it larger"
	}
	return ""
}

// darkRim says how wide the ring is that looks past the backdrop.
func darkRim(p layout.Plan) string {
	rim := shot.Of(p).DarkRim()
	percent := func(share float64) string { return fmt.Sprintf("%.1f %%", 100*share) }
	switch p.Drop.Reverses {
	case flip.ReversesX:
		return "the outer " + percent(rim.AcrossShare) + " of the rod's half-width on either side"
	case flip.ReversesY:
		return "the outer " + percent(rim.DownShare) + " of the rod's half-width above and below"
	}
	widest := math.Max(rim.AcrossShare, rim.DownShare)
	if percent(widest) == percent(rim.CornerShare) {
		return "an even ring, the outer " + percent(widest) + " of the radius"
	}
	return fmt.Sprintf("the outer %s of the radius where it is widest, %s toward its corners", percent(widest),
		percent(rim.CornerShare))
}
