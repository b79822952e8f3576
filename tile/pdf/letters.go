package pdf

import (
	"sync"
	"unicode"

	"github.com/jung-kurt/gofpdf"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"

	"dropsheet/flip/units"
)

// endOfPlane is where the plane ends that the Go fonts and gofpdf know.
const endOfPlane = 0x10000

// letters are those that the fonts have. The no-break space and the soft hyphen show, but are not of Unicode's
// printing kinds.
var letters = sync.OnceValue(func() map[rune]bool {
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		panic(err) // it is built in: it is either sound or the program is not
	}
	all := map[rune]bool{}
	var buffer sfnt.Buffer
	for r := range rune(endOfPlane) {
		glyph, err := font.GlyphIndex(&buffer, r)
		shows := unicode.IsPrint(r) || r == '\u00a0' || r == '\u00ad'
		// The replacement character stands for broken text, and is none that anyone wrote.
		if err == nil && glyph != 0 && shows && r != unicode.ReplacementChar {
			all[r] = true
		}
	}
	return all
})

// letterEms are the widths of letters as shares of their size.
var letterEms = sync.OnceValue(func() map[face]map[rune]float64 {
	all := map[face]map[rune]float64{}
	for f := range fontFiles {
		all[f] = measure(f)
	}
	return all
})

// measure has gofpdf measure the letters of a font.
func measure(f face) map[rune]float64 {
	const pt = 10
	c, ems := gofpdf.New("P", "mm", "A4", ""), map[rune]float64{}
	f.use(c, pt)
	for letter := range letters() {
		ems[letter] = c.GetStringWidth(string(letter)) / units.PointsToMM(pt)
	}
	return ems
}
