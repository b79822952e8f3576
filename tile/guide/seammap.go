package guide

import (
	"image"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
	"dropsheet/tile/seammap"
)

// SeamMap is what a guide shows of the seam map, packed: the map's pixels are many, and need not be kept until the
// guide is written.
type SeamMap struct {
	size        image.Point // of the whole map
	board, drop pdf.Picture // its panels
}

// PackSeamMap packs what seammap.Draw drew of a plan.
func PackSeamMap(p layout.Plan, whole *image.RGBA) (SeamMap, error) {
	panels, packed := seammap.Find(p), SeamMap{size: whole.Rect.Size()}
	var err error
	if packed.board, err = packPanel(whole, panels.Board); err != nil {
		return SeamMap{}, err
	}
	packed.drop, err = packPanel(whole, panels.Drop)
	return packed, err
}

func packPanel(whole *image.RGBA, panel image.Rectangle) (pdf.Picture, error) {
	return packed(whole.SubImage(panel.Add(whole.Rect.Min)))
}
