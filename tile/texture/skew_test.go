package texture

import (
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"dropsheet/tile/artwork"

	"github.com/stretchr/testify/require"
)

// A parallelogram's mean against thousands of places of it: of a picture of waves, which are lost where it is
// longer than they are and kept where it is narrower.
func TestSkewed(t *testing.T) {
	const seed = 3
	random := rand.New(rand.NewSource(seed))
	m := image.NewGray(image.Rect(0, 0, 600, 400))
	for y := range 400 {
		for x := range 600 {
			m.SetGray(x, y, color.Gray{uint8(128 + 60*math.Sin(float64(x)/9)*math.Cos(float64(y)/13))})
		}
	}
	picture := New(&artwork.Picture{Image: m})
	for _, c := range []struct {
		name           string
		ux, uy, vx, vy float64 // in pixels
	}{
		{"a square", 6, 0, 0, 6}, {"long across", 40, 0, 0, 5}, {"long down", 4, 0, 0, 30},
		{"long and aslant", 20, 3, 20, -3}, {"a point", 0, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			square := 0.0
			const places = 60
			for range places {
				u, v := 0.2+0.6*random.Float64(), 0.2+0.6*random.Float64()
				got := float64(picture.Skewed(u, v, c.ux*c.ux+c.uy*c.uy, c.ux*c.vx+c.uy*c.vy, c.vx*c.vx+c.vy*c.vy)[1])
				want, n := 0.0, 0.0
				for a := -0.5 + 1.0/80; a < 0.5; a += 1.0 / 40 {
					for b := -0.5 + 1.0/80; b < 0.5; b += 1.0 / 40 {
						want, n = want+float64(picture.At(u+(a*c.ux+b*c.uy)/600, v+(a*c.vx+b*c.vy)/400, 0)[1]), n+1
					}
				}
				square += (got - want/n) * (got - want/n)
			}
			require.Less(t, math.Sqrt(square/places), 0.012, "seed %d: of waves that swing by 0.2", seed)
		})
	}
}
