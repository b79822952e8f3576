package raster

import (
	"image"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/colour"
)

// level darkens pixels to make up for the lamps' fall-off. The gain is worked out on a lattice of whole grid
// pixels and taken between its knots in integers, so that a pixel comes out alike in every sheet that shows
// it.
type level struct {
	by      layout.Level
	picture layout.Rect // where the grid lies on the board
	grid    Grid
	shift   uint    // knots lie 1 << shift pixels apart
	least   float64 // the gain of the first table
	tables  *[gainSteps][256]uint8
}

// Steps of the gain from the least to 1. Half a step is under a tenth of a level of white.
const gainSteps = 1024

// knotBits are binary places that knots carry below a step of the gain.
const knotBits = 8

// maxShift keeps a sheet's lattice fine; knotSpan is how many times further the nearest lamp stands than
// knots may lie apart. About a lamp z before the board the gain goes with (1 + r²/z²)², which bends by 4/z²
// of itself at most, so that straight lines between knots h apart err by h²/8 of that in either direction:
// h²/z² together, 1/4096.
const (
	maxShift = 6
	knotSpan = 64
)

// Level has the sheets make up for the lamps' fall-off, and returns s; picture is where the grid lies on the
// board. Levels are taken for sRGB's, whatever the artwork's profile. It must not be called any more once Cut
// has been.
func (s *Source) Level(by layout.Level, picture layout.Rect) *Source {
	nearestMM, on := by.NearestLampMM()
	if !on {
		s.level = nil
		return s
	}
	l := &level{by: by, picture: picture, grid: s.grid, least: math.Exp2(-by.LossStops())}
	x, y := s.grid.perMM(picture)
	for l.shift < maxShift && float64(int(2)<<l.shift)/min(x, y)*knotSpan <= nearestMM {
		l.shift++
	}
	l.tables = levelTables(l.least)
	s.level = l
	return s
}

// levelTables holds, for each step of the gain, what becomes of every level: the level whose light is nearest
// to gain times its own, as the curve counts near.
func levelTables(least float64) *[gainSteps][256]uint8 {
	var light [256]float64   // of each level
	var halfway [255]float64 // from each level to the next
	for i := range light {
		light[i] = colour.SRGBToLight(float64(i) / 255)
	}
	for i := range halfway {
		halfway[i] = colour.SRGBToLight((float64(i) + 0.5) / 255)
	}
	tables := new([gainSteps][256]uint8)
	for k := range tables {
		gain := least + (1-least)*float64(k)/(gainSteps-1)
		out := 0
		for i := range light {
			for out < 255 && gain*light[i] >= halfway[out] {
				out++
			}
			tables[k][i] = uint8(out)
		}
	}
	return tables
}

// knot is the gain at a lattice point, counted in steps from the least and knotBits binary places.
func (l *level) knot(i, j int) int {
	x, y := l.grid.perMM(l.picture)
	pixel := func(n int) float64 { return float64(n<<l.shift) + 0.5 }
	gain := l.by.Gain(l.picture.XMM+pixel(i)/x, l.picture.YMM+pixel(j)/y)
	part := 0.0
	if l.least < 1 {
		part = (gain - l.least) / (1 - l.least)
	}
	return int(math.Round(max(0, min(1, part)) * (gainSteps - 1) * (1 << knotBits)))
}

// apply darkens the pixels of a rectangle of the grid, in place; m is what Cut made of it.
func (l *level) apply(m image.Image, r image.Rectangle) {
	// Right shifts round down below zero too, so the lattice goes on beyond the picture's left and upper edge.
	left, right := r.Min.X>>l.shift, (r.Max.X-1)>>l.shift+1
	knots := func(j int) []int {
		row := make([]int, right-left+1)
		for i := range row {
			row[i] = l.knot(left+i, j)
		}
		return row
	}
	above, below, have := []int(nil), []int(nil), 0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		if j := y >> l.shift; below == nil || j != have {
			above, below, have = knots(j), knots(j+1), j
		}
		down := y & (1<<l.shift - 1)
		for i := left; i < right; i++ {
			up := 1<<l.shift - down
			from := above[i-left]*up + below[i-left]*down
			to := above[i-left+1]*up + below[i-left+1]*down
			x0, x1 := max(r.Min.X, i<<l.shift), min(r.Max.X, (i+1)<<l.shift)
			l.run(m, x0-r.Min.X, x1-r.Min.X, y-r.Min.Y, from<<l.shift+(x0-i<<l.shift)*(to-from), to-from)
		}
	}
}

// run darkens pixels x0 up to x1 of a row. at is the gain of the first, in steps with knotBits + 2 shift
// binary places, and grows by step a pixel.
func (l *level) run(m image.Image, x0, x1, y, at, step int) {
	places := (knotBits + 2*l.shift) & 31 // the mask tells the compiler that the shift is small
	at += 1 << (places - 1)               // rounds
	switch m := m.(type) {
	case *image.Gray:
		row := m.Pix[y*m.Stride+x0 : y*m.Stride+x1]
		for i, v := range row {
			row[i] = l.tables[at>>places][v]
			at += step
		}
	case *image.RGBA:
		row := m.Pix[y*m.Stride+4*x0 : y*m.Stride+4*x1]
		for i := 0; i+4 <= len(row); i += 4 {
			p := row[i : i+4 : i+4]
			table := &l.tables[at>>places]
			p[0], p[1], p[2] = table[p[0]], table[p[1]], table[p[2]]
			at += step
		}
	}
}
