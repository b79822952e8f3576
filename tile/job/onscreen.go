package job

import (
	"fmt"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/raster"
	"dropsheet/tile/texture"
)

// OnScreen is the artwork for pictures on screen, in the colours of its profile as far as they can be told,
// and what to warn of. A profile that the sheets leave out, with a warning, counts for nothing here too, so
// that the pictures show what is printed.
func OnScreen(art *artwork.Picture, surround layout.Surround) (picture *texture.Texture, warnings []string) {
	if profileWarning(art.ICC, raster.PrintsGray(art.Image, surround)) != "" {
		without := *art
		without.ICC = nil
		return texture.New(&without), nil
	}
	if _, err := art.OwnSpace(); err != nil {
		warnings = append(warnings, fmt.Sprintf("the artwork's colour profile goes into the sheets, but the pictures on "+
			"screen show its colours only roughly, its levels taken for sRGB's: %v", err))
	}
	return texture.New(art), warnings
}
