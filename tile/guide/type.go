package guide

import (
	"unicode/utf8"

	"dropsheet/flip/units"
	"dropsheet/tile/pdf"
)

// style is how text looks.
type style struct {
	font   string  // one of PDF's core fonts, or what stands in for it
	weight string  // "" or "B"
	pt     float64 // size in points of guide space
	lead   float64 // from line to line, guide mm
	ink    shade
}

var (
	bodyStyle    = style{"Helvetica", "", 10, 4.9, black}
	sideStyle    = style{"Helvetica", "B", 10, 4.9, accent}
	leadStyle    = style{"Helvetica", "", 11.5, 5.8, grey}
	captionStyle = style{"Helvetica", "", 8.5, 4.1, grey}
	labelStyle   = style{"Helvetica", "", 8.5, 4.1, black}
	boldLabel    = style{"Helvetica", "B", 8.5, 4.1, black}
	tinyStyle    = style{"Helvetica", "", 7.5, 3.6, grey}
	footStyle    = style{"Helvetica", "", 8, 4, grey}
	titleStyle   = style{"Helvetica", "B", 18, 8, black}
	numberStyle  = style{"Helvetica", "", 18, 8, accent}
	coverStyle   = style{"Helvetica", "B", 26, 11, black}
	commandStyle = style{"Courier", "", 10, 4.9, black}
	tableStyle   = style{"Helvetica", "", 8.5, 4.6, black}
	tableHead    = style{"Helvetica", "B", 7.5, 4.6, accent}
)

// sizeMM is the type's size in guide mm.
func (s style) sizeMM() float64 { return units.PointsToMM(s.pt) }

// capMM is the height of its capitals: Helvetica's are 0.718 of the size (Adobe Font Metrics, Core 14,
// CapHeight), those of its stand-in about as much.
func (s style) capMM() float64 { return 0.718 * s.sizeMM() }

// at is the style in another size, its lead in proportion.
func (s style) at(pt float64) style {
	s.lead *= pt / s.pt
	s.pt = pt
	return s
}

// in is the style in another ink.
func (s style) in(ink shade) style {
	s.ink = ink
	return s
}

// bold is the style in bold.
func (s style) bold() style {
	s.weight = "B"
	return s
}

// base is the baseline of a line whose box starts at y: its capitals stand in the middle of the box.
func (s style) base(y float64) float64 { return y + s.lead/2 + s.capMM()/2 }

// Signs that switch to bold and back within a text. clean keeps them out of what users write.
const (
	boldOn  = '\x01'
	boldOff = '\x02'
)

// strong sets a part of a text in bold.
func strong(text string) string { return string(boldOn) + text + string(boldOff) }

// clean makes any text from outside fit to be set: what can't be printed becomes question marks.
func (b *book) clean(text string) string {
	printed, _ := pdf.Printed(text)
	return printed
}

// face is the style's font in the file.
func (s style) face() pdf.Font { return pdf.Font{Family: s.font, Weight: s.weight} }

// holding is the style in a font that has the letters of a text, so that the whole of it and every part of it
// are set in one.
func (s style) holding(text string) style {
	s.font = s.face().For(text).Family
	return s
}

// set makes a style current on the canvas.
func (b *book) set(s style) {
	c := b.doc.Canvas()
	s.face().Use(c, s.pt)
	c.SetTextColor(s.ink.r, s.ink.g, s.ink.b)
}

// width measures a line of text.
func (b *book) width(s style, text string) float64 {
	return s.holding(text).face().Ems(text) * s.sizeMM()
}

// put sets one line of text from x on, on a baseline.
func (b *book) put(s style, x, base float64, text string) {
	s = s.holding(text)
	b.set(s)
	b.doc.Canvas().Text(x, base, s.face().Encode(text))
}

// putRight sets one line that ends at x.
func (b *book) putRight(s style, x, base float64, text string) {
	b.put(s, x-b.width(s, text), base, text)
}

// putMiddle sets one line with its middle at x.
func (b *book) putMiddle(s style, x, base float64, text string) {
	b.put(s, x-b.width(s, text)/2, base, text)
}

// putFit sets one line no wider than widthMM, and ends it in an ellipsis where it is longer.
func (b *book) putFit(s style, x, base, widthMM float64, text string) {
	s = s.holding(text)
	b.put(s, x, base, b.fit(s, widthMM, text))
}

// fit shortens a text to widthMM, in a font that holds all of it.
func (b *book) fit(s style, widthMM float64, text string) string {
	const ellipsis = "\u2026"
	s = s.holding(text)
	fits, used, room := 0, 0.0, widthMM-b.width(s, ellipsis)
	for i, letter := range text {
		used += b.width(s, string(letter))
		if used <= room {
			fits = i + utf8.RuneLen(letter)
		}
		if used > widthMM {
			if room < 0 {
				return ""
			}
			return text[:fits] + ellipsis
		}
	}
	return text
}
