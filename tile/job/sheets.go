package job

import (
	"fmt"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/colour"
	"dropsheet/tile/pdf"
	"dropsheet/tile/raster"
	"dropsheet/tile/sheet"
)

// newGrid chooses the grid for a plan's picture, which the artwork gives that many pixels.
func newGrid(p layout.Plan, hung *layout.Hanging, widthPx, heightPx int, finest units.Resolution) raster.Grid {
	if p.Picture.Plain() {
		return raster.NewGrid(p.PictureOnBoard(), widthPx, heightPx, finest)
	}
	return raster.NewBentGrid(hung, p.PictureOnBoard(), widthPx, heightPx, finest)
}

// sheets is the job as the sheets need it, and what to warn of. art is the part of the artwork that is printed.
func (j Job) sheets(art *artwork.Picture, hung *layout.Hanging) (sheets sheet.Job, warnings []string) {
	on := j.PictureOnBoard()
	source := raster.NewSource(art, j.Drop.Reverses.Turn(), j.Print.Grid, j.Print.Grid.Chroma(on)).
		Surround(j.Backdrop.Surround).Level(j.Level(), on).Hang(hung, on)
	warnings = j.nameWarning()
	profile := art.ICC
	if warning := profileWarning(art.ICC, source.Gray()); warning != "" {
		profile, warnings = nil, append(warnings, warning)
	}
	return sheet.Job{
		Label:    sheet.Label{Job: j.Name, Code: j.CheckCode, Of: len(j.Sheets)},
		Plan:     j.Plan,
		Grid:     j.Print.Grid,
		Source:   source,
		Profile:  profile,
		Lossless: j.Print.Lossless || j.Print.Dithered, // JPEG would smooth the dither away
	}, warnings
}

// nameWarning says what becomes of a name whose letters the fonts of sheets and guide lack.
func (j Job) nameWarning() []string {
	printed, full := pdf.Printed(j.Name)
	if full {
		return nil
	}
	return []string{fmt.Sprintf("the name %q can't be printed in full: sheets and guide show it as %q, and the check "+
		"code %s still tells these sheets from others", j.Name, printed, j.CheckCode)}
}

// profileWarning says why an artwork's colour profile can't go into the sheets, or nothing when it can or
// there is none. One of grey doesn't suit where a coloured surround makes the sheets of grey artwork coloured.
func profileWarning(icc []byte, gray bool) string {
	if icc == nil {
		return ""
	}
	if err := colour.CheckProfile(icc, gray); err != nil {
		return fmt.Sprintf("the artwork's colour profile is left out, and its levels taken for sRGB's: %v", err)
	}
	return ""
}
