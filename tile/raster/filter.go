package raster

import (
	"image"
	"math"
)

// Fixed point: weights carry weightBits binary places; a row that is filtered across keeps middleBits of them.
// Integers give the same pixels on every processor. The largest sum, 255 times 2^(6+14) times the kernel's overshoot of under 2, stays within 31 bits.
const (
	weightBits = 14
	middleBits = 6
)

// lobes is the half-width of the Lanczos kernel in result pixels: sinc(x) sinc(x/3) for |x| < 3
// (Duchon, Lanczos Filtering in One and Two Dimensions, Journal of Applied Meteorology 18, 1979).
const lobes = 3

func lanczos(x float64) float64 {
	x = math.Abs(x)
	if x < 1e-9 {
		return 1
	}
	if x >= lobes {
		return 0
	}
	px := math.Pi * x
	return lobes * math.Sin(px) * math.Sin(px/lobes) / (px * px)
}

// tap says which source pixels make one result pixel: those from first on, each times its weight. The weights add up to 1 << weightBits.
type tap struct {
	first   int
	weights []int32
}

// taps works out the result pixels from lo up to hi of an axis that shrinks from n to m pixels.
// Result pixel i is centred at (i + 0.5) n/m - 0.5 of the source (pixel-centre rule); beyond either end the last pixel goes on.
func taps(lo, hi, n, m int) []tap {
	scale := float64(n) / float64(m)
	all := make([]tap, 0, hi-lo)
	for i := lo; i < hi; i++ {
		centre := (float64(clamp(i, m))+0.5)*scale - 0.5
		from, to := int(math.Ceil(centre-lobes*scale)), int(math.Floor(centre+lobes*scale))
		first, last := clamp(from, n), clamp(to, n)
		real := make([]float64, last-first+1)
		sum := 0.0
		for k := from; k <= to; k++ {
			w := lanczos((float64(k) - centre) / scale)
			real[clamp(k, n)-first] += w
			sum += w
		}
		all = append(all, tap{first, wholeWeights(real, sum, weightBits)})
	}
	return all
}

// wholeWeights rounds weights to so many binary places, so that they still add up: what rounding loses goes to the largest.
func wholeWeights(real []float64, sum float64, bits uint) []int32 {
	weights := make([]int32, len(real))
	left, largest := int32(1)<<bits, 0
	for k, w := range real {
		weights[k] = int32(math.Round(w / sum * float64(int(1)<<bits)))
		left -= weights[k]
		if w > real[largest] {
			largest = k
		}
	}
	weights[largest] += left
	return weights
}

// filterRect writes a rectangle of the grid, filtered down from the artwork as it hangs. Rows of artwork are read one at a time and
// added into the result rows that they belong to, so that memory is a few rows whatever the artwork.
func (s *Source) filterRect(dst []byte, stride, channels int, r image.Rectangle) {
	across := taps(r.Min.X, r.Max.X, s.width, s.grid.WidthPx)
	down := taps(r.Min.Y, r.Max.Y, s.height, s.grid.HeightPx)
	x0, x1 := span(across)
	y0, y1 := span(down)

	row := make([]byte, (x1-x0)*channels)
	middle := make([]int32, r.Dx()*channels)
	open := map[int][]int32{} // result rows that are still being added up
	var spare [][]int32
	start := 0 // the first result row that is not finished
	for y := y0; y < y1; y++ {
		s.copyRect(row, len(row), channels, image.Rect(x0, y, x1, y+1))
		filterRow(middle, row, across, x0, channels)
		for j := start; j < len(down) && down[j].first <= y; j++ {
			t := down[j]
			if y-t.first >= len(t.weights) {
				continue
			}
			sum := open[j]
			if sum == nil {
				if len(spare) == 0 {
					spare = append(spare, make([]int32, len(middle)))
				}
				sum, spare = spare[len(spare)-1], spare[:len(spare)-1]
				clear(sum)
				open[j] = sum
			}
			addRow(sum, middle, t.weights[y-t.first])
			if y-t.first == len(t.weights)-1 {
				finishRow(dst[j*stride:], sum)
				delete(open, j)
				spare = append(spare, sum)
			}
		}
		for start < len(down) && down[start].first+len(down[start].weights) <= y+1 {
			start++
		}
	}
}

// span is the range of source pixels that taps read.
func span(all []tap) (from, to int) {
	from = math.MaxInt
	for _, t := range all {
		from, to = min(from, t.first), max(to, t.first+len(t.weights))
	}
	return from, to
}

// filterRow filters one row of artwork, which starts at pixel x0, across. A fourth channel is taken to be opaque.
func filterRow(dst []int32, row []byte, across []tap, x0, channels int) {
	const round, keep = 1 << (weightBits - middleBits - 1), weightBits - middleBits
	if channels == 1 {
		for i, t := range across {
			sum := int32(round)
			p := row[t.first-x0:][:len(t.weights)]
			for k, w := range t.weights {
				sum += w * int32(p[k])
			}
			dst[i] = sum >> keep
		}
		return
	}
	for i, t := range across {
		r, g, b := int32(round), int32(round), int32(round)
		p := row[4*(t.first-x0):]
		for _, w := range t.weights {
			q := p[:4:4]
			r, g, b = r+w*int32(q[0]), g+w*int32(q[1]), b+w*int32(q[2])
			p = p[4:]
		}
		d := dst[4*i:][:4:4]
		d[0], d[1], d[2], d[3] = r>>keep, g>>keep, b>>keep, 0xff<<middleBits
	}
}

func addRow(sum, row []int32, weight int32) {
	sum = sum[:len(row)] // tells the compiler that both are as long
	for i, v := range row {
		sum[i] += weight * v
	}
}

func finishRow(dst []byte, sum []int32) {
	const round = 1 << (weightBits + middleBits - 1)
	for i, v := range sum {
		dst[i] = byte(max(0, min(255, (v+round)>>(weightBits+middleBits))))
	}
}
