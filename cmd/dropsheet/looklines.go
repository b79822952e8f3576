package main

import (
	"fmt"
	"math"
	"strings"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/job"
)

// sizeOf says how large a drop or rod is.
func sizeOf(p layout.Plan) string {
	d := p.Sight().Drop
	if d.Oblate() {
		return fmt.Sprintf("%.4g mm wide and %.4g mm high (%g of the width), as much as a ball of %.4g mm", 2*d.RadiusMM(),
			2*d.HalfHeightMM(), d.HeightOverWidth, d.DiameterMM)
	}
	return fmt.Sprintf("%.4g mm across", d.DiameterMM)
}

// bareText says how many cells carry no picture.
func bareText(p layout.Plan) string {
	if bare := p.Backdrop.Columns*p.Backdrop.Rows - len(p.Sheets); bare > 0 {
		return fmt.Sprintf(", %d of the %d cells without picture and so without a sheet", bare,
			p.Backdrop.Columns*p.Backdrop.Rows)
	}
	return ""
}

// lookLines says how the picture appears in the drop, and what that holds for.
func lookLines(p layout.Plan) [][2]string {
	var lines [][2]string
	drop := noun(p)
	look := "bulged: wrapped round the " + drop + ", squeezed toward its rim"
	switch l := p.Picture.Look; l {
	case layout.Bulged:
	case layout.Straight:
		look = "straight: the print is bent so that the picture appears as drawn"
	default:
		look = fmt.Sprintf("%g of the way from bulged to straight", float64(l))
	}
	lines = append(lines, [2]string{"look", look + framedAs(p.Picture.Framing)})
	if p.CutToFill() {
		lines = append(lines, [2]string{"", "cut to what the " + drop + " sees at the fill; --fit inside shows all of it"})
	}
	if f := p.Picture.Framing; f.OffX != 0 || f.OffY != 0 {
		lines = append(lines, [2]string{"", "print and board are laid out about the axis, which meets their middle: the " +
			"picture lies to one side of it"})
	}
	if text := stretchText(p); text != "" {
		lines = append(lines, [2]string{"", text})
	}
	if s, ok := shot.Of(p).Swing(); ok {
		lines = append(lines, [2]string{"swing", swingText(s)})
	}
	return lines
}

// stretchText says what a rod does not do for the picture, and how much of it shows for that. It is empty
// where there is nothing to say: of a ball, and where the print makes up for it.
func stretchText(p layout.Plan) string {
	if p.Drop.Body == flip.Ball || p.Picture.Look == layout.Straight {
		return ""
	}
	sees, whole, way := shot.Of(p).Coverage().Sees.HeightMM, p.Picture.HeightMM, "high"
	if p.Drop.Body == flip.LevelRod {
		sees, whole, way = shot.Of(p).Coverage().Sees.WidthMM, p.Picture.WidthMM, "wide"
	}
	text := "a rod squeezes the picture across itself and not along, and so stretches it: along it the frame sees "
	if p.Picture.Look != layout.Bulged {
		text = "a rod squeezes the picture across itself and not along, and the print makes up for part of that: along " +
			"it the frame sees "
	}
	if sees >= whole {
		return text + "all of the print"
	}
	return text + fmt.Sprintf("%.1f mm of a print that is %.1f mm %s", sees, whole, way)
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
func swingText(s shot.Swing) string {
	// + 0 turns a minus zero into zero
	change := func(share float64) string { return fmt.Sprintf("%+.0f %%", math.Round(100*(share-1))+0) }
	text := fmt.Sprintf("swinging from %.0f %% flatter than round to %.0f %% longer, the picture changes by %s / %s "+
		"in width and %s / %s in height",
		100*(1-s.Flat.HeightOverWidth), 100*(s.Long.HeightOverWidth-1),
		change(s.Flat.WidthShare), change(s.Long.WidthShare), change(s.Flat.HeightShare), change(s.Long.HeightShare))
	if s.PerSecond > 0 {
		text += fmt.Sprintf("; a free drop swings so %.0f times a second", s.PerSecond)
	}
	return text
}

// resolutionLines says what the frame can show of the picture, and what print and artwork that takes.
func resolutionLines(p layout.Plan) [][2]string {
	r := shot.Of(p).Resolution()
	return [][2]string{
		{"resolution", fmt.Sprintf("the picture spans %.0f x %.0f frame pixels in the %s; a frame pixel sees %s of print "+
			"in the middle, %s at the fill",
			r.AcrossPx, r.DownPx, noun(p), onPixelText(r.CentreMM, r.CentreAlongMM), onPixelText(r.RimMM, r.RimAlongMM))},
		{"", fmt.Sprintf("more than %.0f pixels to the inch of print, or a picture of more than %d x %d pixels, would "+
			"not be seen in it%s", r.NeededPPI, r.NeededWidthPx, r.NeededHeightPx, autoText(r))},
	}
}

// hardlyDiffers is the ratio of two lengths up to which one stands for both.
const hardlyDiffers = 1.5

// onPixelText says how much print a frame pixel sees: of a rod across it and along it, which is 0 for a ball.
func onPixelText(acrossMM, alongMM float64) string {
	if alongMM == 0 || max(acrossMM/alongMM, alongMM/acrossMM) <= hardlyDiffers {
		return fmt.Sprintf("%.2f mm", acrossMM)
	}
	return fmt.Sprintf("%.2f mm across and %.2f mm along", acrossMM, alongMM)
}

// autoText says what to ask for where the frame uses far less than the default.
func autoText(r shot.Resolution) string {
	if r.NeededPPI < job.DefaultPPI {
		return "; --ppi auto prints just that: smaller files, faster printing"
	}
	return ""
}

// artworkLine says how many pixels of artwork and print fall on a frame pixel.
func artworkLine(r shot.Resolution, widthPx, heightPx int, printPerMM float64) string {
	centre, rim := r.ArtworkPx(float64(widthPx), float64(heightPx))
	return fmt.Sprintf("on the length of a frame pixel fall %.1f pixels of the artwork and %.1f of the print in the "+
		"middle, %.1f and %.1f at the fill",
		centre, r.CentreMM*printPerMM, rim, r.RimMM*printPerMM)
}

// tooCoarse warns of an artwork with fewer pixels than the frame has for it.
func tooCoarse(r shot.Resolution, widthPx, heightPx int) []string {
	centre, rim := r.ArtworkPx(float64(widthPx), float64(heightPx))
	if fewest := min(centre, rim); fewest < 1 {
		return []string{fmt.Sprintf("the picture has %d x %d pixels and the frame could show %d x %d: it will look soft "+
			"or blocky there", widthPx, heightPx, r.NeededWidthPx, r.NeededHeightPx)}
	}
	return nil
}

// whitePaper warns of paper that stays white in the drop's view.
func whitePaper(p layout.Plan) []string {
	if p.Picture.Plain() || p.Backdrop.Surround != "" {
		return nil
	}
	return []string{"where sheets go on beyond the picture, white paper shows as a bright rim in the " + noun(p) +
		": print it dark with --background black, or trim the board to the picture"}
}
