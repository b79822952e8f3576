package pdf

import (
	"bytes"
	"image"
	"image/color"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/unicode/norm"

	"dropsheet/tile/pdf/pdftest"
)

// written is a document of a line of text in each of the fonts given, over a picture.
func written(t *testing.T, text string, fonts ...face) []byte {
	t.Helper()
	d := New("text")
	d.AddPage(200, 60)
	d.Place(rect(150, 40, 20, 10))
	text, _ = Printed(text)
	for i, f := range fonts {
		f = f.holding(text)
		f.use(d.canvas, 14)
		d.canvas.Text(10, 10+10*float64(i), f.encode(text))
	}
	return streamed(t, d, func(PictureID) (Picture, error) { return EncodeFlate(image.NewGray(image.Rect(0, 0, 1, 1))) })
}

// embedded counts the font files in a PDF file.
func embedded(t *testing.T, file []byte) int { return len(check(t, file).with(`/FontFile`)) }

// Text shows as it was written, in letters that can be found and copied; the fonts' files are there only when
// a letter needs them.
func TestText(t *testing.T) {
	for _, c := range []struct {
		name, text, shows string
		full              bool
		embeds            int // font files, of three fonts used
	}{
		{"ASCII", "Harbour (at) dusk \\ 7", "Harbour (at) dusk \\ 7", true, 0},
		{"cp1252", "Hafen – „häßlich“ ÿ Š œ € ™", "Hafen – „häßlich“ ÿ Š œ € ™", true, 0},
		{"cp1252, decomposed", "Ha\u0308fen", "Häfen", true, 0},
		{"Cyrillic", "Гавань в сумерках", "Гавань в сумерках", true, 3},
		{"Ukrainian", "Ґанок, їжак, Київ", "Ґанок, їжак, Київ", true, 3},
		{"Greek", "Λιμάνι στο σούρουπο", "Λιμάνι στο σούρουπο", true, 3},
		{"Czech", "přístav 7", "přístav 7", true, 3},
		{"Czech, decomposed", "pr\u030ci\u0301stav", "přístav", true, 3},
		{"bytes that are brackets, backslashes and line ends in UTF-16", "ĨĩŜčĊ ШЩќЍЊ", "ĨĩŜčĊ ШЩќЍЊ",
			true, 3},
		{"mixture", "Port – Гавань – Λιμάνι (7)", "Port – Гавань – Λιμάνι (7)", true, 3},
		{"Chinese", "港 dusk", "? dusk", false, 0},
		{"Chinese among Cyrillic", "Порт 港", "Порт ?", false, 3},
		{"beyond the basic plane", "dusk 🌆", "dusk ?", false, 0},
		{"right to left", "נמל", "???", false, 0},
		{"control characters", "bell\a\n\x01\u0085", "bell????", false, 0},
		{"broken UTF-8", "a\xe2\x82b", "a??b", false, 0},
		{"replacement character", "a\ufffdЖ", "a?Ж", false, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			printed, full := Printed(c.text)
			require.Equal(t, c.shows, printed)
			require.Equal(t, c.full, full)
			file := written(t, c.text, sans, sansBold, mono)
			require.Equal(t, c.embeds, embedded(t, file))
			shown := strings.Fields(pdftest.Open(t, file).Text(1))
			require.Equal(t, strings.Repeat(strings.Join(strings.Fields(c.shows), " ")+" ", 3), strings.Join(shown, " ")+" ")
		})
	}
}

// Letters of a stand-in are drawn as its file has them: their ink reaches as far to all sides.
func TestStandInsDrawTheirLetters(t *testing.T) {
	const dpi, pt = 600, 14
	var buffer sfnt.Buffer
	for core, s := range standIns {
		file, err := sfnt.Parse(s.ttf)
		require.NoError(t, err)
		for _, r := range "ЖдЩїҐΩώřčŁ" {
			glyph, err := file.GlyphIndex(&buffer, r)
			require.NoError(t, err)
			bounds, _, err := file.GlyphBounds(&buffer, glyph, fixed.I(1000), font.HintingNone)
			require.NoError(t, err)
			page := pdftest.Open(t, written(t, string(r), core)).Render(1, dpi)
			ink := image.Rectangle{}
			for y := range 400 {
				for x := range 1000 { // left of the picture
					if page.RGBAAt(x, y).R < 128 {
						ink = ink.Union(image.Rect(x, y, x+1, y+1))
					}
				}
			}
			const originPx, pxPerUnit = 10 / 25.4 * dpi, pt / 72. * dpi / 1000
			px := func(v fixed.Int26_6) float64 { return originPx + float64(v)/64*pxPerUnit }
			require.InDeltaSlice(t,
				[]float64{px(bounds.Min.X), px(bounds.Min.Y), px(bounds.Max.X), px(bounds.Max.Y)},
				[]float64{float64(ink.Min.X), float64(ink.Min.Y), float64(ink.Max.X), float64(ink.Max.Y)}, 1.6, "%c in %v", r,
				s.face)
		}
	}
}

// A picture placed beside embedded fonts is still streamed in.
func TestPicturesAndEmbeddedFonts(t *testing.T) {
	page := pdftest.Open(t, written(t, "Гавань", sans, sansBold)).Render(1, 254)
	require.Equal(t, color.RGBA{A: 255}, page.RGBAAt(1600, 450), "160, 45 mm: black")
	require.Equal(t, color.RGBA{255, 255, 255, 255}, page.RGBAAt(1800, 450), "180, 45 mm: paper")
}

// The same text makes the same bytes, and few of them.
func TestEmbeddedFontsAreSmallAndTheSameAgain(t *testing.T) {
	const text = "Гавань в сумерках, přístav, Λιμάνι"
	first := written(t, text, sans, sansBold)
	for range 20 {
		require.True(t, bytes.Equal(first, written(t, text, sans, sansBold)))
	}
	perFont := (len(first) - len(written(t, "Harbour at dusk, harbour, harbour.", sans, sansBold))) / 2
	t.Logf("%d bytes a font", perFont)
	require.Less(t, perFont, 16_000, "whole fonts have some 150,000")
}

// Which letters cp1252 has, by golang.org/x/text; and the stand-ins have them all too, for the whole of a
// text is set in one font.
func TestLettersOfTheFonts(t *testing.T) {
	var buffer sfnt.Buffer
	for _, s := range standIns {
		file, err := sfnt.Parse(s.ttf)
		require.NoError(t, err)
		for r := range rune(endOfPlane) {
			glyph, err := file.GlyphIndex(&buffer, r)
			if inStandIns(r) {
				require.True(t, err == nil && glyph > 0, "%v lacks %q", s.face, r)
			}
			code, ok := charmap.Windows1252.EncodeRune(r)
			ok = ok && r >= ' ' && !(r >= 0x7f && r < 0xa0) // not a control character
			require.Equal(t, ok, inCore(r), "%q", r)
			if ok {
				require.Equal(t, string([]byte{code}), sans.encode(string(r)))
				require.True(t, inStandIns(r), "%q", r)
			}
		}
	}
}

// Widths of stand-ins agree with the advances in their files, to gofpdf's whole thousandths.
func TestWidthsOfStandIns(t *testing.T) {
	var buffer sfnt.Buffer
	for _, s := range standIns {
		file, err := sfnt.Parse(s.ttf)
		require.NoError(t, err)
		perEm := fixed.I(int(file.UnitsPerEm()))
		for r := range standInLetters() {
			glyph, err := file.GlyphIndex(&buffer, r)
			require.NoError(t, err)
			advance, err := file.GlyphAdvance(&buffer, glyph, perEm, font.HintingNone)
			require.NoError(t, err)
			require.InDelta(t, float64(advance)/float64(perEm), s.face.ems(string(r)), 0.00051, "%q in %v", r, s.face)
		}
	}
	require.InDelta(t, 0.667+2*0.556, sans.ems("Aa?"), 1e-9, "Adobe Font Metrics, Core 14, recalled from memory: A "+
		"667, a 556, ? 556")
	require.InDelta(t, 0.667+2*0.556, sans.ems("Aa港"), 1e-9, "a letter that is lacking is as wide as its question mark")
}

// Whatever a text holds: it is written without fault, in as many letters as its composed form has, and comes
// out the same when it is cleaned twice.
func FuzzText(f *testing.F) {
	seeds := []string{"Harbour at dusk", "", "Гавань", "港 Ж", "a\xffb", "r\u030c\u0301\u0301", "\u202e Ж 😀",
		"(\\)\rč", "\uffff\U00010400\ud7ff"}
	if len(seeds) == 0 {
		f.Fatal("no seeds")
	}
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		printed, full := Printed(text)
		require.Equal(t, full, strings.Count(printed, "?") == strings.Count(norm.NFC.String(text), "?"))
		again, full := Printed(printed)
		require.Equal(t, printed, again)
		require.True(t, full)
		d := New("any")
		d.AddPage(100, 100)
		for _, core := range []face{sans, sansBold, mono} {
			for _, set := range []string{printed, text} { // what was not cleaned does no harm either
				font := core.holding(set)
				font.use(d.canvas, 10)
				encoded := font.encode(set)
				if font == core {
					require.Len(t, encoded, utf8.RuneCountInString(set))
				} else {
					require.Equal(t, utf8.RuneCountInString(set), utf8.RuneCountInString(encoded))
				}
				require.InDelta(t, font.ems(set)*10/72*25.4, d.canvas.GetStringWidth(encoded), 1e-6*float64(1+len(set)))
				d.canvas.Text(10, 10, encoded)
			}
		}
		require.NoError(t, d.Stream(&bytes.Buffer{}, none))
	})
}
