package seamsight

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// paint is the light that the printed board sends back in full light, and how busy it is, as sums from which
// the mean of any upright box follows at once (Crow, Summed-area tables for texture mapping, SIGGRAPH 1984).
type paint struct {
	surface           *board.Surface
	widthPx, heightPx int // of the copy that is summed
	// luminance of all pixels above and to the left; a row and a column more than there are pixels
	sums    []float64
	beyond  float64 // luminance of what is beyond the picture
	printed bool    // whether that is printed, and so makes up for the lamps
}

const (
	// finestPx bounds the copy of the picture that is summed. Of a metre of board it knows half a millimetre,
	// about the width of a seam.
	finestPx = 2048
	// cells is how many widths of a line, as it shows, count as its surroundings, each way. Within two or
	// three widths to either side detail masks most (our model).
	cells = 5
)

func newPaint(p layout.Plan, picture *texture.Texture) *paint {
	m := paint{surface: board.New(p, picture), beyond: board.PaperWhite}
	if surround, ok := m.surface.Surround(); ok {
		m.beyond, m.printed = float64(surround.Luminance()), true
	}
	copied := picture.Reduced(finestPx)
	m.widthPx, m.heightPx = copied.Rect.Dx(), copied.Rect.Dy()
	stride := m.widthPx + 1
	m.sums = make([]float64, stride*(m.heightPx+1))
	texture.Rows(m.heightPx, func(y int) {
		row, sum := m.sums[(y+1)*stride:][:stride], 0.0
		for x := range m.widthPx {
			sum += float64(texture.Linear(copied.RGBAAt(x, y)).Luminance())
			row[x+1] = sum
		}
	})
	for i := stride; i < len(m.sums); i++ {
		m.sums[i] += m.sums[i-stride]
	}
	return &m
}

// at is the luminance at a place in board mm averaged over a box of that size, and the standard deviation
// among the boxes around, cells each way. A box that is turned or stretched on a bent picture counts as an
// upright one that is as large each way.
//
// Beyond the picture is the surround, or bare paper, which makes up for no lamps; near its outline a box is
// part one and part the other, and the outline is detail itself: with a share f of the boxes inside it, the
// variance among all is f times the picture's and f (1 - f) times the square of the step. A plain picture's
// straight edges count as no detail.
func (m *paint) at(xMM, yMM, acrossMM, downMM float64) (mean, spread float64) {
	// The drop shows a box longest away from the axis, and so does the outline of its fill lie.
	spanMM, plain := max(acrossMM, downMM), m.surface.Plain()
	if plain {
		spanMM = 0
	}
	at := m.surface.InPicture(xMM, yMM, cells*spanMM)
	beyond := m.beyond
	if m.printed {
		beyond *= at.Gain
	}
	within, around := board.Covered(at.InsideMM, spanMM), board.Covered(at.InsideMM, cells*spanMM)
	if around == 0 {
		return beyond, 0
	}
	wide, high := math.Abs(at.UX)*acrossMM, math.Abs(at.VY)*downMM
	if !plain {
		wide, high = math.Hypot(wide, at.UY*downMM), math.Hypot(at.VX*acrossMM, high)
	}
	mean, spread = m.boxes(at.U, at.V, wide, high)
	mean, spread = mean*at.Gain, spread*at.Gain
	if plain { // whose place is all inside here
		return mean, spread
	}
	step := mean - beyond
	return beyond + within*step, math.Sqrt(around*spread*spread + around*(1-around)*step*step)
}

// boxes does it in picture coordinates.
func (m *paint) boxes(u, v, wide, high float64) (mean, spread float64) {
	xs, ys := edges(u, wide, m.widthPx), edges(v, high, m.heightPx)
	stride := m.widthPx + 1
	var sum, square, n float64
	for j := range cells {
		high := ys[j+1] - ys[j]
		if high == 0 {
			continue
		}
		upper, lower := m.sums[ys[j]*stride:][:stride], m.sums[ys[j+1]*stride:][:stride]
		left := lower[xs[0]] - upper[xs[0]]
		for i := range cells {
			right := lower[xs[i+1]] - upper[xs[i+1]]
			if wide := xs[i+1] - xs[i]; wide > 0 {
				light := (right - left) / float64(wide*high)
				sum, square, n = sum+light, square+light*light, n+1
				if i == cells/2 && j == cells/2 {
					mean = light
				}
			}
			left = right
		}
	}
	return mean, math.Sqrt(max(0, square/n-sum/n*(sum/n)))
}

// snapped is a number of pixels to a millionth. Edges fall half-way between two pixels often, and in the last digits,
// which would tell to which of them they go, processors differ.
func snapped(px float64) float64 {
	const parts = 1 << 20
	return math.Round(px*parts) / parts
}

// edges are the pixel edges of the boxes along one side of the picture, which is n pixels long: boxes of that
// share of the side, the middle one about a place that is a share of it too, and at least a pixel long.
// Outside the picture boxes are empty, except the middle one, whose place comes back to the picture's edge.
func edges(at, box float64, n int) (px [cells + 1]int) {
	size := float64(n)
	box = max(snapped(box*size), 1)
	at = max(0.5, min(snapped(at*size), size-0.5))
	for i := range px {
		px[i] = int(max(0, min(at+float64((float64(i)-cells/2.0)*box)+0.5, size)))
	}
	if middle := cells / 2; px[middle] == px[middle+1] { // rounding may leave nothing at an edge
		px[middle] = min(int(at), n-1)
		px[middle+1] = px[middle] + 1
	}
	return px
}
