package raster

import (
	"dropsheet/tile/artwork"
	"dropsheet/tile/raster/weigh"
)

// dither makes levels of weighed rows by thresholds that go by the pixel's place on the grid, as tile/artwork does by
// its place in the artwork: the mean of a few pixels then tells what lies between two levels, on every sheet alike.
// Columns with the same thresholds are made together, from the row raised by what their threshold is off a half.
type dither struct {
	phases   [artwork.DitherSide]phase
	channels int
	reach    int // how many pixels of a row are read
}

// phase is every eighth column.
type phase struct {
	first, rank int // its first column, and the grid's x of that
	taps        *weigh.Taps
	made        []byte
}

// newDither prepares for columns that are made of pixels from x0 on, the first of them the grid's pixel gridX.
func newDither(columns []tap, x0, gridX, channels int) *dither {
	d := &dither{channels: channels}
	for k := range d.phases {
		var own []tap
		for i := k; i < len(columns); i += len(d.phases) {
			own = append(own, columns[i])
		}
		taps := inRow(own, x0)
		d.phases[k] = phase{k, gridX + k, taps, make([]byte, len(own)*channels)}
		d.reach = max(d.reach, taps.Reach())
	}
	return d
}

// across makes row y of the grid of a row whose first numbers were weighed down, which it spends.
func (d *dither) across(y int, dst []byte, middle []int16, weighed int) {
	raised := int16(0)
	for _, p := range d.phases {
		by := weigh.Raised(artwork.DitherRank(p.rank, y), artwork.DitherRanks)
		for i := range middle[:weighed] {
			middle[i] += by - raised
		}
		raised = by
		if d.channels == 1 {
			weigh.Across(p.made, middle, p.taps)
		} else {
			weigh.AcrossPixels(p.made, middle, p.taps)
		}
		step := len(d.phases) * d.channels
		for i, to := 0, p.first*d.channels; i < len(p.made); i, to = i+d.channels, to+step {
			copy(dst[to:to+d.channels], p.made[i:i+d.channels])
		}
	}
}
