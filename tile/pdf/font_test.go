package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"regexp"
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
		d.Put(Style{face: f, Pt: 14}, 10, 10+10*float64(i), text)
	}
	return streamed(t, d, func(PictureID) (Picture, error) { return EncodeFlate(image.NewGray(image.Rect(0, 0, 1, 1))) })
}

// Text shows as it was written, in letters that can be found and copied.
func TestText(t *testing.T) {
	for _, c := range []struct {
		name, text, shows string
		full              bool
	}{
		{"ASCII", "Harbour (at) dusk \\ 7", "Harbour (at) dusk \\ 7", true},
		{"cp1252", "Hafen – „häßlich“ ÿ Š œ € ™", "Hafen – „häßlich“ ÿ Š œ € ™", true},
		{"cp1252, decomposed", "Ha\u0308fen", "Häfen", true},
		{"Cyrillic", "Гавань в сумерках", "Гавань в сумерках", true},
		{"Ukrainian", "Ґанок, їжак, Київ", "Ґанок, їжак, Київ", true},
		{"Greek", "Λιμάνι στο σούρουπο", "Λιμάνι στο σούρουπο", true},
		{"Czech", "přístav 7", "přístav 7", true},
		{"Czech, decomposed", "pr\u030ci\u0301stav", "přístav", true},
		{"bytes that are brackets, backslashes and line ends in UTF-16", "ĨĩŜčĊ ШЩќЍЊ",
			"ĨĩŜčĊ ШЩќЍЊ", true},
		{"mixture", "Port – Гавань – Λιμάνι (7)", "Port – Гавань – Λιμάνι (7)", true},
		{"Chinese", "港 dusk", "? dusk", false},
		{"Chinese among Cyrillic", "Порт 港", "Порт ?", false},
		{"beyond the basic plane", "dusk 🌆", "dusk ?", false},
		{"right to left", "נמל", "???", false},
		{"control characters", "bell\a\n\x01\u0085", "bell????", false},
		{"broken UTF-8", "a\xe2\x82b", "a??b", false},
		{"replacement character", "a\ufffdЖ", "a?Ж", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			printed, full := Printed(c.text)
			require.Equal(t, c.shows, printed)
			require.Equal(t, c.full, full)
			file := written(t, c.text, sans, sansBold, mono)
			shown := strings.Fields(pdftest.Open(t, file).Text(1))
			require.Equal(t, strings.Repeat(strings.Join(strings.Fields(c.shows), " ")+" ", 3), strings.Join(shown, " ")+" ")
		})
	}
}

// Letters are drawn as the font's file has them: their ink reaches as far to all sides.
func TestFontsDrawTheirLetters(t *testing.T) {
	const dpi, pt = 600, 14
	var buffer sfnt.Buffer
	for f, from := range fontFiles {
		file, err := sfnt.Parse(from.ttf)
		require.NoError(t, err)
		for _, r := range "ЖдЩїҐΩώřčŁgQß" {
			glyph, err := file.GlyphIndex(&buffer, r)
			require.NoError(t, err)
			bounds, _, err := file.GlyphBounds(&buffer, glyph, fixed.I(1000), font.HintingNone)
			require.NoError(t, err)
			page := pdftest.Open(t, written(t, string(r), f)).Render(1, dpi)
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
				[]float64{float64(ink.Min.X), float64(ink.Min.Y), float64(ink.Max.X), float64(ink.Max.Y)}, 1.6, "%c in %v", r, f)
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
func TestFontsAreSmallAndTheSameAgain(t *testing.T) {
	const text = "Гавань в сумерках, přístav, Λιμάνι"
	first := written(t, text, sans, sansBold)
	for range 20 {
		require.True(t, bytes.Equal(first, written(t, text, sans, sansBold)))
	}
	second := len(first) - len(written(t, text, sans))
	t.Logf("%d bytes a font", second)
	require.Less(t, second, 16_000, "whole fonts have some 150,000")
}

// Each font is in the file, named as a subset of what its own name table says (ISO 32000-1, 9.6.4), by all that
// name it alike; other letters give another tag.
func TestFontsAreNamedAsSubsets(t *testing.T) {
	tags := map[string]bool{}
	for _, text := range []string{"Harbour", "Harbour at dusk", "Гавань"} {
		for f, from := range fontFiles {
			var buffer sfnt.Buffer
			parsed, err := sfnt.Parse(from.ttf)
			require.NoError(t, err)
			own, err := parsed.Name(&buffer, sfnt.NameIDPostScript)
			require.NoError(t, err)
			require.Equal(t, own, from.postScript)

			data := written(t, text, f)
			file := check(t, data)
			require.Len(t, file.with(`^<</Type /Font\b`), 2)
			require.Len(t, file.with(`/FontFile2 \d+ 0 R`), 1)
			names := map[string]int{}
			for _, object := range file.with(`/(BaseFont|FontName) `) {
				for _, m := range regexp.MustCompile(`/(BaseFont|FontName) /([^\s/]+)`).FindAllStringSubmatch(object, -1) {
					names[m[2]]++
				}
			}
			require.Len(t, names, 1, "%v", names)
			for name, times := range names {
				require.Equal(t, 3, times, "font, descendant and descriptor")
				require.Regexp(t, `^[A-Z]{6}\+`+own+`$`, name)
				require.False(t, tags[name], "%s stands for two subsets", name)
				tags[name] = true
				require.Equal(t, []pdftest.Font{{Name: name, Embedded: true}}, pdftest.Open(t, data).Fonts(1))
			}
		}
	}
}

// A range of the map to Unicode changes the last byte alone (ISO 32000-1, 9.10.3), and all letters are in one.
func TestMapToUnicode(t *testing.T) {
	covered := map[string]bool{}
	ranges := regexp.MustCompile(`<(..)00> <(..)FF> <(..)00>\n`).FindAllStringSubmatch(unicodeMap(), -1)
	for _, m := range ranges {
		require.Equal(t, []string{m[1], m[1]}, m[2:])
		covered[m[1]] = true
	}
	require.Contains(t, unicodeMap(), fmt.Sprintf("\n%d beginbfrange\n", len(ranges)))
	require.Less(t, len(ranges), 100, "the most that a block may have (Adobe Technical Note 5014, recalled from memory)")
	for r := range letters() {
		require.True(t, covered[fmt.Sprintf("%02X", r>>8)], "%q", r)
	}
}

// All fonts have the same letters, those of Windows code page 1252 (by golang.org/x/text) among them.
func TestLettersOfTheFonts(t *testing.T) {
	var buffer sfnt.Buffer
	for f, from := range fontFiles {
		file, err := sfnt.Parse(from.ttf)
		require.NoError(t, err)
		for r := range rune(endOfPlane) {
			if letters()[r] {
				glyph, err := file.GlyphIndex(&buffer, r)
				require.True(t, err == nil && glyph > 0, "%v lacks %q", f, r)
			}
			_, ok := charmap.Windows1252.EncodeRune(r)
			if ok && r >= ' ' && !(r >= 0x7f && r < 0xa0) { // not a control character
				require.True(t, letters()[r], "%q", r)
			}
		}
	}
}

// Names in the alphabets of Europe's Latin, Greek and Cyrillic languages print in full. The letters are recalled from
// memory, beside those of ASCII. The fonts lack German's capital sharp s, which has been one of its letters since 2017.
func TestAlphabetsOfEurope(t *testing.T) {
	for language, special := range map[string]string{
		"Albanian":          "ÇçËë",
		"Bosnian, Croatian": "ČčĆćĐđŠšŽž",
		"Bulgarian":         "ЪъЬьЩщЮюЯя",
		"Catalan":           "ÀàÈèÉéÍíÏïÒòÓóÚúÜüÇç·",
		"Czech":             "ÁáČčĎďÉéĚěÍíŇňÓóŘřŠšŤťÚúŮůÝýŽž",
		"Danish, Norwegian": "ÆæØøÅå",
		"Dutch":             "ËëÏïÉé",
		"Esperanto":         "ĈĉĜĝĤĥĴĵŜŝŬŭ",
		"Estonian":          "ÄäÕõÖöÜüŠšŽž",
		"Finnish, Swedish":  "ÅåÄäÖö",
		"French":            "ÀàÂâÆæÇçÉéÈèÊêËëÎîÏïÔôŒœÙùÛûÜüŸÿ",
		"German":            "ÄäÖöÜüß",
		"Greek":             "ΆάΈέΉήΊίΌόΎύΏώΪϊΫϋΐΰΣσς",
		"Hungarian":         "ÁáÉéÍíÓóÖöŐőÚúÜüŰű",
		"Icelandic":         "ÁáÐðÉéÍíÓóÚúÝýÞþÆæÖö",
		"Irish":             "ÁáÉéÍíÓóÚú",
		"Italian":           "ÀàÈèÉéÌìÎîÒòÙù",
		"Latvian":           "ĀāČčĒēĢģĪīĶķĻļŅņŠšŪūŽž",
		"Lithuanian":        "ĄąČčĘęĖėĮįŠšŲųŪūŽž",
		"Macedonian":        "ЃѓЌќЅѕЉљЊњЏџЈј",
		"Maltese":           "ĊċĠġĦħŻż",
		"Polish":            "ĄąĆćĘęŁłŃńÓóŚśŹźŻż",
		"Portuguese":        "ÃãÁáÂâÀàÇçÉéÊêÍíÕõÓóÔôÚú",
		"Romanian":          "ĂăÂâÎîȘșȚț",
		"Russian": "АБВГДЕЁЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯ" +
			"абвгдеёжзийклмнопрстуфхцчшщъыьэюя",
		"Serbian":               "ЂђЉљЊњЋћЏџ",
		"Slovak":                "ĽľĹĺŔŕÄäÔô",
		"Slovenian":             "ČčŠšŽž",
		"Spanish":               "ÁáÉéÍíÑñÓóÚúÜü¿¡",
		"Turkish":               "ÇçĞğİıÖöŞşÜü",
		"Ukrainian, Belarusian": "ҐґЄєІіЇїЎў",
		"Welsh":                 "ÂâÊêÎîÔôÛûŴŵŶŷ",
	} {
		printed, full := Printed(special)
		require.Equal(t, special, printed, language)
		require.True(t, full, language)
	}
}

// Widths agree with the advances in the fonts' files, to gofpdf's whole thousandths.
func TestWidthsOfLetters(t *testing.T) {
	var buffer sfnt.Buffer
	for f, from := range fontFiles {
		file, err := sfnt.Parse(from.ttf)
		require.NoError(t, err)
		perEm := fixed.I(int(file.UnitsPerEm()))
		for r := range letters() {
			glyph, err := file.GlyphIndex(&buffer, r)
			require.NoError(t, err)
			advance, err := file.GlyphAdvance(&buffer, glyph, perEm, font.HintingNone)
			require.NoError(t, err)
			require.InDelta(t, float64(advance)/float64(perEm), f.ems(string(r)), 0.00051, "%q in %v", r, f)
		}
		metrics, err := file.Metrics(&buffer, perEm, font.HintingNone)
		require.NoError(t, err)
		require.InDelta(t, float64(metrics.CapHeight)/float64(perEm), capShare, 0.005, "%v", f)
	}
	require.Equal(t, sans.ems("Aa?"), sans.ems("Aa港"), "a letter that is lacking is as wide as its question mark")
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
		for _, font := range []face{sans, sansBold, mono} {
			for _, set := range []string{printed, text} { // what was not cleaned does no harm either
				d.Put(Style{face: font, Pt: 10}, 10, 10, set)
				shown := printable(set)
				require.Equal(t, utf8.RuneCountInString(set), utf8.RuneCountInString(shown))
				require.InDelta(t, font.ems(set)*10/72*25.4, d.canvas.GetStringWidth(shown), 1e-6*float64(1+len(set)))
			}
		}
		require.NoError(t, d.Stream(&bytes.Buffer{}, none))
	})
}
