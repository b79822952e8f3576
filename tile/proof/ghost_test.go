package proof

import (
	"context"
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// A fifth of the radius to the right, 11.5 degrees of incidence, a drop of water shows what lies a little to the left
// of the board's middle; light that is thrown back inside twice comes there from 28.6 degrees to the right
// (Descartes: 6r - 2i, 109 mm on a board 200 mm behind), 0.0004 of it, T²R² by Fresnel. On black that is one level
// of 255; left of the middle there is none of it, for only the board's right is white.
func TestLightThrownBackTwiceShowsOnBlack(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 300, 200))
	for y := range 200 {
		for x := range 110 { // the picture's left is the board's right
			m.SetGray(x, y, color.Gray{255})
		}
	}
	for _, sharp := range []bool{true, false} {
		p := plan(t, func(s *layout.Setup) { s.Camera.FNumber = 22 })
		s := Scene{Plan: p, Camera: p.Camera, Picture: texture.New(&artwork.Picture{Image: m}), Sharp: sharp}
		v := s.view()
		v.beside, v.lattice = v.newBeside(context.Background()), v.newLattice(context.Background())
		shift := int(0.2 * 2.5 / p.Camera.PixelMM())
		i := math.Asin(0.2)
		r := math.Asin(0.2 / 1.333)
		across, in := math.Pow(math.Sin(i-r)/math.Sin(i+r), 2), math.Pow(math.Tan(i-r)/math.Tan(i+r), 2)
		want := (math.Pow((1-across)*across, 2) + math.Pow((1-in)*in, 2)) / 2
		require.InEpsilon(t, want, float64(v.pixel(240+shift, 160)[1]), 0.05, "sharp %t", sharp)
		require.Less(t, float64(v.pixel(240-shift, 160)[1]), want/10, "sharp %t", sharp)
	}
}
