package pdf

import "dropsheet/flip/units"

// Put sets one line of text from x on, on a baseline.
func (d *Document) Put(s Style, xMM, baseMM float64, text string) {
	if d.IsUndrawn() {
		return
	}
	d.useStyle(s)
	d.text(s, xMM, baseMM, text)
}

// PutRight sets one line that ends at x.
func (d *Document) PutRight(s Style, xMM, baseMM float64, text string) {
	d.Put(s, xMM-s.Width(text), baseMM, text)
}

// PutMiddle sets one line with its middle at x.
func (d *Document) PutMiddle(s Style, xMM, baseMM float64, text string) {
	d.Put(s, xMM-s.Width(text)/2, baseMM, text)
}

// PutFit sets one line no wider than widthMM, shortened where it is longer.
func (d *Document) PutFit(s Style, xMM, baseMM, widthMM float64, text string) {
	d.Put(s, xMM, baseMM, s.Fit(widthMM, text))
}

// PutUpward sets one line that reads upwards, from (x, y) on, its baseline at x.
func (d *Document) PutUpward(s Style, xMM, yMM float64, text string) {
	if d.IsUndrawn() {
		return
	}
	d.useStyle(s)
	d.Turned(xMM, yMM, func() { d.text(s, xMM, yMM, text) })
}

// PutLine sets a line of wrapped text.
func (d *Document) PutLine(s Style, xMM, baseMM float64, l TextLine) {
	if d.IsUndrawn() {
		return
	}
	for _, r := range l {
		d.Put(r.style(s), xMM, baseMM, r.text)
		xMM += r.style(s).Width(r.text)
	}
}

// useStyle makes a style the current one; text writes in it.
func (d *Document) useStyle(s Style) {
	s.face.use(d.canvas, s.Pt)
	d.canvas.SetTextColor(s.Shade.rgb())
}

func (d *Document) text(s Style, xMM, baseMM float64, text string) {
	d.canvas.Text(units.Nanometres(xMM), units.Nanometres(baseMM), printable(text))
}
