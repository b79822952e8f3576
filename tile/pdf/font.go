package pdf

import (
	"bytes"
	"strings"

	"github.com/jung-kurt/gofpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/text/unicode/norm"
)

// face is what a text is set in: one of PDF's core fonts, which readers bring along and which have the
// letters of cp1252, or its stand-in, a Go font that goes into the file, cut down to the letters used, and
// has those of Europe's Latin alphabets, Greek and Cyrillic.
type face struct {
	family string // Helvetica or Courier, or what holding makes of them
	weight string // "" or "B"; Courier has no bold
}

var sans, sansBold, mono = face{"Helvetica", ""}, face{"Helvetica", "B"}, face{"Courier", ""}

// standIns are the fonts that stand in for core fonts. All have the same letters.
//
// The Go fonts are by Bigelow & Holmes, under the BSD licence of the Go project
// (x/image/font/gofont/ttfs/README): they may be passed on whole or cut down as long as the notice goes
// along. gofpdf keeps it: it stands in the font's name table.
var standIns = map[face]struct {
	face
	ttf []byte
}{
	sans:     {face{"go", ""}, goregular.TTF},
	sansBold: {face{"go", "B"}, gobold.TTF},
	mono:     {face{"gomono", ""}, gomono.TTF},
}

// substitute is printed for each letter that no font has, on sheets and in the guide alike.
const substitute = '?'

// Printed is a text as it can be printed, in composed letters: each that no font has, and each control
// character, is a question mark. full tells that there are none of those.
func Printed(text string) (printed string, full bool) {
	full = true
	printed = strings.Map(func(r rune) rune {
		if inCore(r) || inStandIns(r) {
			return r
		}
		full = false
		return substitute
	}, norm.NFC.String(text)) // file names may come decomposed, and the fonts have no accents by themselves
	return printed, full
}

// holding is the font for the whole of a text: f, unless that lacks letters which its stand-in has.
func (f face) holding(text string) face {
	if to, ok := standIns[f]; ok && strings.ContainsFunc(text, func(r rune) bool { return !inCore(r) && inStandIns(r) }) {
		return to.face
	}
	return f
}

// use makes the font current on a canvas.
func (f face) use(c *gofpdf.Fpdf, pt float64) {
	if ttf := f.embedded(); ttf != nil && c.GetFontDesc(f.family, f.weight).Ascent == 0 { // not on this canvas yet
		c.AddUTF8FontFromBytes(f.family, f.weight, bytes.Clone(ttf)) // gofpdf writes into it
	}
	c.SetFont(f.family, f.weight, pt)
}

// encode writes a text as a canvas takes it while the font is current. Letters that the font lacks become
// question marks.
func (f face) encode(text string) string {
	var out strings.Builder
	if f.embedded() != nil {
		for _, r := range text {
			if !inStandIns(r) {
				r = substitute
			}
			out.WriteRune(r)
		}
		return out.String()
	}
	for _, r := range text {
		letter, ok := cp1252()[r]
		if !ok {
			letter = substitute
		}
		out.WriteByte(letter)
	}
	return out.String()
}

// ems is how far a text goes, as a share of the font's size. Nothing is kerned, so that letters add up.
func (f face) ems(text string) float64 {
	ems := coreEms
	if f.embedded() != nil {
		ems = standInEms
	}
	of, sum := ems()[f], 0.0
	for _, r := range text {
		letter, ok := of[r]
		if !ok {
			letter = of[substitute]
		}
		sum += letter
	}
	return sum
}

// embedded is the font's file, or nil for a core font.
func (f face) embedded() []byte {
	for _, s := range standIns {
		if s.face == f {
			return s.ttf
		}
	}
	return nil
}
