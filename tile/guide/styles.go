package guide

import "dropsheet/tile/pdf"

// How text looks, by what it is for. Sizes are points of guide space, leads guide mm.
var (
	bodyStyle    = pdf.Sans(10).Lead(4.9).In(black)
	sideStyle    = pdf.Sans(10).Bold().Lead(4.9).In(accent)
	leadStyle    = pdf.Sans(11.5).Lead(5.8).In(grey)
	captionStyle = pdf.Sans(8.5).Lead(4.1).In(grey)
	labelStyle   = pdf.Sans(8.5).Lead(4.1).In(black)
	boldLabel    = pdf.Sans(8.5).Bold().Lead(4.1).In(black)
	tinyStyle    = pdf.Sans(7.5).Lead(3.6).In(grey)
	footStyle    = pdf.Sans(8).Lead(4).In(grey)
	titleStyle   = pdf.Sans(18).Bold().Lead(8).In(black)
	numberStyle  = pdf.Sans(18).Lead(8).In(accent)
	coverStyle   = pdf.Sans(26).Bold().Lead(11).In(black)
	commandStyle = pdf.Mono(10).Lead(4.9).In(black)
	tableStyle   = pdf.Sans(8.5).Lead(4.6).In(black)
	tableHead    = pdf.Sans(7.5).Bold().Lead(4.6).In(accent)
)

// strong sets a part of a text in bold.
func strong(text string) string { return pdf.Strong(text) }

// clean makes any text from outside fit to be set: what can't be printed becomes question marks.
func (b *book) clean(text string) string {
	printed, _ := pdf.Printed(text)
	return printed
}

// block sets wrapped text in a box of its own, outside the flow, and returns where it ends.
func (b *book) block(s pdf.Style, x, y, widthMM float64, text string) (bottom float64) {
	for _, l := range b.wrap(s, widthMM, text) {
		b.PutLine(s, x, s.Base(y), l)
		y += s.LeadMM
	}
	return y
}

// wrapped is a text to be broken into lines.
type wrapped struct {
	style   pdf.Style
	widthMM float64
	text    string
}

// wrap breaks a text into lines, and keeps them: while a guide finds its arrangement it meets each text many times.
func (b *book) wrap(s pdf.Style, widthMM float64, text string) []pdf.TextLine {
	key := wrapped{s, widthMM, text}
	lines, ok := b.broken[key]
	if !ok {
		lines = s.Wrap(widthMM, text)
		b.broken[key] = lines
	}
	return lines
}

// blockMM is the height that block would take.
func (b *book) blockMM(s pdf.Style, widthMM float64, text string) float64 {
	return float64(len(b.wrap(s, widthMM, text))) * s.LeadMM
}
