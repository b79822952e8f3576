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

// face is what a text is set in: a font that goes into the file, cut down to the letters used, so that every
// reader shows the same. It has the letters of Europe's Latin alphabets, Greek and Cyrillic.
type face struct {
	family string // as gofpdf knows it, lower case
	weight string // "" or "B"; there is no bold mono
}

var sans, sansBold, mono = face{"go", ""}, face{"go", "B"}, face{"gomono", ""}

// fontFile is a face's TrueType file and its PostScript name, which stands in its name table.
type fontFile struct {
	postScript string
	ttf        []byte
}

// fontFiles are the fonts. All have the same letters.
//
// The Go fonts are by Bigelow & Holmes, under the BSD licence of the Go project
// (x/image/font/gofont/ttfs/README): they may be passed on whole or cut down as long as the notice goes
// along. gofpdf keeps it: it stands in the font's name table.
var fontFiles = map[face]fontFile{
	sans:     {"GoRegular", goregular.TTF},
	sansBold: {"Go-Bold", gobold.TTF},
	mono:     {"GoMono", gomono.TTF},
}

// substitute is printed for each letter that the fonts lack, on sheets and in the guide alike.
const substitute = '?'

// Printed is a text as it can be printed, in composed letters: each that the fonts lack, and each control
// character, is a question mark. full tells that there are none of those.
func Printed(text string) (printed string, full bool) {
	composed := norm.NFC.String(text) // file names may come decomposed, and the fonts have no accents by themselves
	return printable(composed), !strings.ContainsFunc(composed, func(r rune) bool { return !letters()[r] })
}

// printable is a text with a question mark for each letter that the fonts lack.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		if letters()[r] {
			return r
		}
		return substitute
	}, text)
}

// use makes the font current on a canvas.
func (f face) use(c *gofpdf.Fpdf, pt float64) {
	if c.GetFontDesc(f.family, f.weight).Ascent == 0 { // not on this canvas yet
		c.AddUTF8FontFromBytes(f.family, f.weight, bytes.Clone(fontFiles[f].ttf)) // gofpdf writes into it
	}
	c.SetFont(f.family, f.weight, pt)
}

// ems is how far a text goes, as a share of the font's size. Nothing is kerned, so that letters add up.
func (f face) ems(text string) float64 {
	of, sum := letterEms()[f], 0.0
	for _, r := range text {
		letter, ok := of[r]
		if !ok {
			letter = of[substitute]
		}
		sum += letter
	}
	return sum
}
