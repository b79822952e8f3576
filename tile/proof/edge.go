package proof

import (
	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// edgePixel is the light of a pixel near a drop's edge, some of whose rays may go through the drop and some past it.
//
// What goes past is worked out by these few rays only for what the drop takes away from it: where they all go past, the pixel is as if there were no drop, as those
// further out are. Two sets of rays never agree quite, and where one took over from the other there would be a step.
func (v *view) edgePixel(i, j int, drop layout.Point, through spread) texture.Light {
	hidden := make([]float64, len(v.atEdge)) // the share of each ray's patch that the drop covers
	var most float64
	least := 1.0
	for k := range v.atEdge {
		r := v.lens.ray(i, j, &v.atEdge[k])
		hidden[k] = covered(-v.sight.Drop.ClearanceMM(fromDrop(r, drop)), v.edgeSpansMM[k])
		most, least = max(most, hidden[k]), min(least, hidden[k])
	}
	var light texture.Light
	if least < 1 {
		light = v.besidePixel(i, j)
	}
	if most == 0 {
		return light
	}
	var sum texture.Light
	for k := range v.atEdge {
		a := &v.atEdge[k]
		r := v.lens.ray(i, j, a)
	}
	return light
}
