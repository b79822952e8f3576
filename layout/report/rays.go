package report

import (
	"fmt"
	"math"

	"dropsheet/flip"
)

// Ray is a ray across a rod that is drawn and told, with the letter that names it.
type Ray struct {
	Letter string
	Fill   float64
	flip.Path
}

// Rays are rays across a rod, from a quarter of its visible radius out to the picture's own fill; none for a ball.
func (r *Report) Rays() (rays []Ray) {
	own := r.shot.Picture.Fill
	if !r.shot.Drop.Body.Rod() {
		return nil
	}
	for _, fill := range []float64{0.25, 0.5, 0.75, own} {
		const apart = 0.03 // else the two would look like one
		if fill > own-apart && fill != own {
			continue
		}
		if p, ok := r.shot.Sight().Path(fill); ok {
			rays = append(rays, Ray{string(rune('A' + len(rays))), fill, p})
		}
	}
	return rays
}

// RayTable is their figures, with as many empty lines below for somebody's own.
func (r *Report) RayTable(own int) Table {
	t := Table{Heads: []string{"ray", "passes at", "off the axis", "i", "r", "turned by", "meets the board at"}}
	deg := func(rad float64) Text {
		return say("%s", Figure{Value: rad * 180 / math.Pi, Unit: Degrees, Decimals: 1, keepZeros: true})
	}
	for _, ray := range r.Rays() {
		t.Rows = append(t.Rows, Row{Cells: []Text{say(ray.Letter), say("%s", fill("", ray.Fill)), deg(ray.LeavesRad),
			deg(ray.Faces[0].BeforeRad), deg(ray.Faces[0].BehindRad), deg(ray.TurnedRad),
			say("%s", length("", math.Abs(ray.Corners[len(ray.Corners)-1].Y)))}})
	}
	for range own {
		row := Row{}
		for range t.Heads {
			row.Cells = append(row.Cells, nil)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// RayLaw says what turns the rays.
func (r *Report) RayLaw() Text {
	if d := r.shot.Drop; d.WallMM > 0 {
		return say("at each face n sin i stays what it was, i the angle to the radius and n the refractive index, 1 in air, "+
			"%s in the wall and %s inside; i and r in the table are before and behind the first face, and the %s turns the ray "+
			"by what all four add up to", Figure{Path: "drop.wall_index", Value: d.WallIndex, Decimals: 4},
			Figure{Path: "drop.index", Value: d.Index, Decimals: 4}, r.body)
	}
	return say("where a ray meets the %s's surface, sin i = n sin r, i the angle to the radius outside, r inside, and n "+
		"the refractive index, here %s; it leaves at the angles at which it came, and so is turned by 2(i - r)", r.body,
		Figure{Path: "drop.index", Value: r.shot.Drop.Index, Decimals: 4})
}

// OneTo tells a scale: so many millimetres for one on paper, or one for so many.
func OneTo(scale float64) string {
	rounded := func(scale float64) float64 { return math.Round(1e6*scale) / 1e6 }
	if rounded(scale) >= 1 {
		return fmt.Sprintf("1 : %g", rounded(scale))
	}
	return fmt.Sprintf("%g : 1", rounded(1/scale))
}
