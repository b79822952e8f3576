package pdf

import (
	"iter"
	"maps"
	"sync"
	"unicode"

	"github.com/jung-kurt/gofpdf"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"

	"dropsheet/flip/units"
)

// inCore tells whether the core fonts have a letter.
func inCore(r rune) bool {
	if r >= ' ' && r < unicode.MaxASCII {
		return true
	}
	_, ok := cp1252()[r]
	return ok
}

// inStandIns tells whether their stand-ins have it.
func inStandIns(r rune) bool { return standInLetters()[r] }

// endOfPlane is where the plane ends that cp1252, the Go fonts and gofpdf know.
const endOfPlane = 0x10000

// cp1252 is the core fonts' code of each letter that they have.
var cp1252 = sync.OnceValue(func() map[rune]byte {
	translate := measuring().UnicodeTranslatorFromDescriptor("") // cp1252, built in
	codes := map[rune]byte{}
	for r := range rune(endOfPlane) {
		code := translate(string(r))
		if unknown := r > unicode.MaxASCII && code == "."; !unknown && !unicode.IsControl(r) {
			codes[r] = code[0]
		}
	}
	return codes
})

// standInLetters are the letters that the stand-ins have.
var standInLetters = sync.OnceValue(func() map[rune]bool {
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		panic(err) // it is built in: it is either sound or the program is not
	}
	letters := map[rune]bool{}
	var buffer sfnt.Buffer
	for r := range rune(endOfPlane) {
		glyph, err := font.GlyphIndex(&buffer, r)
		// The replacement character stands for broken text, and is none that anyone wrote.
		if err == nil && glyph != 0 && (unicode.IsPrint(r) || inCore(r)) && r != unicode.ReplacementChar {
			letters[r] = true
		}
	}
	return letters
})

// Widths of letters as shares of their size.
var (
	coreEms = sync.OnceValue(func() map[face]map[rune]float64 {
		all := map[face]map[rune]float64{}
		for core := range standIns {
			all[core] = measure(core, maps.Keys(cp1252()))
		}
		return all
	})
	standInEms = sync.OnceValue(func() map[face]map[rune]float64 {
		all := map[face]map[rune]float64{}
		for _, s := range standIns {
			all[s.face] = measure(s.face, maps.Keys(standInLetters()))
		}
		return all
	})
)

// measure has gofpdf measure letters of a font.
func measure(f face, letters iter.Seq[rune]) map[rune]float64 {
	const pt = 10
	c, ems := measuring(), map[rune]float64{}
	f.use(c, pt)
	for letter := range letters {
		ems[letter] = c.GetStringWidth(f.encode(string(letter))) / units.PointsToMM(pt)
	}
	return ems
}

// measuring is a canvas to measure on.
func measuring() *gofpdf.Fpdf { return gofpdf.New("P", "mm", "A4", "") }
