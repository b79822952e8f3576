package pdf

import (
	"slices"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// Shade is a colour of the drawing, 0 to 255 a channel.
type Shade struct{ R, G, B uint8 }

// Grey is a shade from 0, black, to 255, white.
func Grey(level uint8) Shade { return Shade{level, level, level} }

func (s Shade) rgb() (r, g, b int) { return int(s.R), int(s.G), int(s.B) }

// Pen is how a line looks. Its ends are cut off square where it ends.
type Pen struct {
	Shade   Shade
	WidthMM float64
	DashMM  []float64 // dashes and gaps in turn; none for a whole line
}

// Line is a straight line between two points of the page.
type Line struct{ From, To layout.Point }

// Lines draws all lines with one pen, then all with the next: a wide pen before a narrow one puts lines on keylines,
// and no line's keyline cuts through its neighbour.
func (d *Document) Lines(lines []Line, pens ...Pen) {
	if d.IsUndrawn() {
		return
	}
	d.canvas.SetLineCapStyle("butt")
	for _, p := range pens {
		d.usePen(p)
		for _, l := range lines {
			from, to := whole(l.From), whole(l.To)
			d.canvas.Line(from.XMM, from.YMM, to.XMM, to.YMM)
		}
	}
}

// Line draws one line.
func (d *Document) Line(x1MM, y1MM, x2MM, y2MM float64, p Pen) {
	d.Lines([]Line{{layout.Point{XMM: x1MM, YMM: y1MM}, layout.Point{XMM: x2MM, YMM: y2MM}}}, p)
}

// usePen makes a pen the current one.
func (d *Document) usePen(p Pen) {
	d.canvas.SetLineWidth(units.Nanometres(p.WidthMM))
	d.canvas.SetDrawColor(p.Shade.rgb())
	d.useDashes(p.DashMM)
}

// useDashes makes dashes current, unless they are.
func (d *Document) useDashes(dashMM []float64) {
	if !slices.Equal(dashMM, d.dashMM) {
		d.dashMM = dashMM
		wholeMM := make([]float64, len(dashMM))
		for i, mm := range dashMM {
			wholeMM[i] = units.Nanometres(mm)
		}
		d.canvas.SetDashPattern(wholeMM, 0)
	}
}
