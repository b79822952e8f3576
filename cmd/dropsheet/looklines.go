package main

import (
	"fmt"
	"strings"

	"dropsheet/layout"
)

// sizeOf says how large a drop or rod is.
func sizeOf(p layout.Plan) string {
	d := p.Sight().Drop
	if d.Oblate() {
		return fmt.Sprintf("%.4g mm wide and %.4g mm high (%g of the width), as much as a ball of %.4g mm", 2*d.RadiusMM(), 2*d.HalfHeightMM(), d.HeightOverWidth, d.DiameterMM)
	}
	return fmt.Sprintf("%.4g mm across", d.DiameterMM)
}

// bareText says how many cells carry no picture.
func bareText(p layout.Plan) string {
	if bare := p.Backdrop.Columns*p.Backdrop.Rows - len(p.Sheets); bare > 0 {
		return fmt.Sprintf(", %d of the %d cells without picture and so without a sheet", bare, p.Backdrop.Columns*p.Backdrop.Rows)
	}
	return ""
}

// lookLines says how the picture appears in the drop, and what that holds for.
func lookLines(p layout.Plan) [][2]string {
	var lines [][2]string
	look := "bulged: wrapped round the drop, squeezed toward its rim"
	switch l := p.Picture.Look; l {
	case layout.Bulged:
	case layout.Straight:
		look = "straight: the print is bent so that the picture appears as drawn"
	default:
		look = fmt.Sprintf("%g of the way from bulged to straight", float64(l))
	}
	lines = append(lines, [2]string{"look", look + framedAs(p.Picture.Framing)})
	if s, ok := p.Swing(); ok {
		lines = append(lines, [2]string{"swing", swingText(s)})
	}
	return lines
}

// framedAs says how the picture lies in the drop, where not upright and in its middle.
func framedAs(f layout.Framing) string {
	var parts []string
	if f.TurnDeg != 0 {
		parts = append(parts, fmt.Sprintf("turned by %g degrees clockwise", f.TurnDeg))
	}
	if f.OffX != 0 || f.OffY != 0 {
		parts = append(parts, fmt.Sprintf("%.4g,%.4g of it on the axis", f.OffX+0.5, f.OffY+0.5))
	}
	if f.Round {
		parts = append(parts, "cut round")
	}
	if len(parts) == 0 {
		return ""
	}
	return "; " + strings.Join(parts, ", ")
}

// swingText says in a line how much the picture changes while the drop swings.
func swingText(s layout.Swing) string {
	change := func(share float64) string { return fmt.Sprintf("%+.0f %%", 100*(share-1)) }
	text := fmt.Sprintf("from %.3g to %.3g times as high as wide the picture goes from %s wide and %s high to %s and %s",
		s.Flat.HeightOverWidth, s.Long.HeightOverWidth, change(s.Flat.WidthShare), change(s.Flat.HeightShare), change(s.Long.WidthShare), change(s.Long.HeightShare))
	if s.PerSecond > 0 {
		text += fmt.Sprintf("; a free drop swings so %.0f times a second", s.PerSecond)
	}
	return text
}

// resolutionLines says what the frame can show of the picture, and what print and artwork that takes.
func resolutionLines(p layout.Plan) [][2]string {
	r := p.Resolution()
	return [][2]string{
		{"resolution", fmt.Sprintf("the picture spans %.0f x %.0f frame pixels in the %s; a frame pixel sees %.2f mm of print in the middle, %.2f mm at the fill", r.AcrossPx, r.DownPx, noun(p), r.CentreMM, r.RimMM)},
		{"", fmt.Sprintf("more than %.0f pixels to the inch of print, or a picture of more than %d x %d pixels, would not be seen in it%s", r.NeededPPI, r.NeededWidthPx, r.NeededHeightPx, savesInk(r))},
	}
}

// savesInk says what to ask for where the frame uses far less than the default.
func savesInk(r layout.Resolution) string {
	if r.NeededPPI < defaultPPI {
		return "; --ppi auto prints that and saves ink and time"
	}
	return ""
}

// artworkLine says how many pixels of artwork and print fall on a frame pixel.
func artworkLine(r layout.Resolution, widthPx, heightPx int, printPerMM float64) string {
	centre, rim := r.ArtworkPx(float64(widthPx), float64(heightPx))
	return fmt.Sprintf("on the length of a frame pixel fall %.1f pixels of the artwork and %.1f of the print in the middle, %.1f and %.1f at the fill",
		centre, r.CentreMM*printPerMM, rim, r.RimMM*printPerMM)
}

// tooCoarse warns of an artwork with fewer pixels than the frame has for it.
func tooCoarse(r layout.Resolution, widthPx, heightPx int) []string {
	centre, rim := r.ArtworkPx(float64(widthPx), float64(heightPx))
	if fewest := min(centre, rim); fewest < 1 {
		return []string{fmt.Sprintf("the picture has %d x %d pixels and the frame could show %d x %d: it will look soft or blocky in the drop", widthPx, heightPx, r.NeededWidthPx, r.NeededHeightPx)}
	}
	return nil
}
