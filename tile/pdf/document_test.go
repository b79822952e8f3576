package pdf

import (
	"bytes"
	"errors"
	"image"
	"io"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/pdf/pdftest"
)

// none is for documents without pictures.
func none(PictureID) (Picture, error) { return Picture{}, errors.New("no picture was placed") }

// streamed returns the bytes of a document, already checked for its structure.
func streamed(t *testing.T, d *Document, next func(PictureID) (Picture, error)) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, d.Stream(&out, next))
	check(t, out.Bytes())
	return out.Bytes()
}

func TestPagesKeepTheirSizesAndOrder(t *testing.T) {
	sizes := []struct {
		name                                string
		widthMM, heightMM, wantWPt, wantHPt float64
	}{
		{"A4 portrait, ISO 216", 210, 297, 595.276, 841.890},
		{"A4 landscape", 297, 210, 841.890, 595.276},
		{"A4 landscape again", 297, 210, 841.890, 595.276},
		{"US letter, 8.5 x 11 in", 215.9, 279.4, 612, 792},
		{"13 x 19 in", 330.2, 482.6, 936, 1368},
		{"the size that gofpdf defaults to here", 2, 2, 5.669, 5.669},
		{"the largest, 200 in", 5080, 5080, 14400, 14400},
	}
	d := New("sizes")
	for _, s := range sizes {
		d.AddPage(s.widthMM, s.heightMM)
	}
	doc := pdftest.Open(t, streamed(t, d, none))
	require.Equal(t, len(sizes), doc.PageCount())
	for i, s := range sizes {
		w, h := doc.PageSizePoints(i + 1)
		// gofpdf rounds the media box to 0.01 points.
		require.InDelta(t, s.wantWPt, w, 0.006, s.name)
		require.InDelta(t, s.wantHPt, h, 0.006, s.name)
	}
}

// Expected figures worked by hand from 1 in = 25.4 mm = 72 points (ISO 32000-1, 8.3.2.3, recalled from
// memory): 10 mm are 28.346 points.
func TestBoxesComeOutInPointsWithYUp(t *testing.T) {
	d := New("boxes")
	d.AddPage(200, 100)
	d.SetBoxes(rect(20, 10, 160, 60), rect(10, 5, 180, 80))
	d.AddPage(100, 200) // no boxes: those before must not stick
	d.AddPage(210, 297)
	d.SetBoxes(rect(0, 0, 210, 297), rect(0, 0, 210, 297))
	doc := pdftest.Open(t, streamed(t, d, none))

	tests := []struct {
		name string
		page int
		want pdftest.Boxes
	}{
		{"unequal on all sides", 1, pdftest.Boxes{
			Media: pdftest.Box{LeftPt: 0, BottomPt: 0, RightPt: 566.93, TopPt: 283.46},
			Crop:  pdftest.Box{LeftPt: 0, BottomPt: 0, RightPt: 566.93, TopPt: 283.46},
			Bleed: pdftest.Box{LeftPt: 28.35, BottomPt: 42.52, RightPt: 538.58, TopPt: 269.29}, // 15 mm below, 5 mm above
			Trim:  pdftest.Box{LeftPt: 56.69, BottomPt: 85.04, RightPt: 510.24, TopPt: 255.12}, // 30 mm below, 10 mm above
		}},
		{"none", 2, pdftest.Boxes{
			Media: pdftest.Box{RightPt: 283.46, TopPt: 566.93}, Crop: pdftest.Box{RightPt: 283.46, TopPt: 566.93},
			Bleed: pdftest.Box{RightPt: 283.46, TopPt: 566.93}, Trim: pdftest.Box{RightPt: 283.46, TopPt: 566.93},
		}},
		{"the whole page", 3, pdftest.Boxes{
			Media: pdftest.Box{RightPt: 595.28, TopPt: 841.89}, Crop: pdftest.Box{RightPt: 595.28, TopPt: 841.89},
			Bleed: pdftest.Box{RightPt: 595.28, TopPt: 841.89}, Trim: pdftest.Box{RightPt: 595.28, TopPt: 841.89},
		}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := doc.PageBoxes(test.page)
			for _, pair := range [][2]pdftest.Box{
				{test.want.Media, got.Media}, {test.want.Crop, got.Crop}, {test.want.Bleed, got.Bleed}, {test.want.Trim, got.Trim},
			} {
				require.InDeltaSlice(t,
					[]float64{pair[0].LeftPt, pair[0].BottomPt, pair[0].RightPt, pair[0].TopPt},
					[]float64{pair[1].LeftPt, pair[1].BottomPt, pair[1].RightPt, pair[1].TopPt}, 0.001)
			}
		})
	}
}

func TestTitles(t *testing.T) {
	tests := []struct{ name, title, want string }{
		{"plain", "Harbour at dusk", "Harbour at dusk"},
		{"accents", "Crépuscule à l’île, Ørsted, Übergröße", "Crépuscule à l’île, Ørsted, Übergröße"},
		{"brackets and backslash", `a (b)) \( c \ d>> endobj`, `a (b)) \( c \ d>> endobj`},
		{"bytes that are brackets and line ends in UTF-16", "⠨⤩尨⠍⠊ഊ", "⠨⤩尨⠍⠊ഊ"},
		{"beyond the basic plane", "drop 💧 and 𝔉", "drop 💧 and 𝔉"},
		{"invalid UTF-8", "a\xe2\x82", "a\uFFFD\uFFFD"},
		{"looks like the end of a file", "startxref 7 %%EOF trailer", "startxref 7 %%EOF trailer"},
		{"empty", "", ""},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d := New(test.title)
			d.AddPage(50, 50)
			require.Equal(t, test.want, pdftest.Open(t, streamed(t, d, none)).Title())
		})
	}
}

func TestErrors(t *testing.T) {
	good := rect(10, 10, 20, 20)
	nan, inf := math.NaN(), math.Inf(1)
	tests := []struct {
		name string
		draw func(d *Document)
		want string
	}{
		{"no pages", func(d *Document) {}, "no pages"},
		{"page of no width", func(d *Document) { d.AddPage(0, 100) }, "0 x 100 mm"},
		{"page of NaN", func(d *Document) { d.AddPage(100, nan) }, "NaN"},
		{"page too large", func(d *Document) { d.AddPage(5081, 100) }, "5080"},
		{"page infinite", func(d *Document) { d.AddPage(inf, 100) }, "+Inf"},
		{"picture before a page", func(d *Document) { d.Place(good) }, "first page"},
		{"boxes before a page", func(d *Document) { d.SetBoxes(good, good) }, "first page"},
		{"picture of no height", func(d *Document) { d.AddPage(100, 100); d.Place(rect(1, 2, 3, 0)) }, "3 x 0 mm at 1, 2"},
		{"picture at NaN", func(d *Document) { d.AddPage(100, 100); d.Place(rect(nan, 2, 3, 4)) }, "NaN"},
		{"bleed off the page", func(d *Document) { d.AddPage(100, 100); d.SetBoxes(good, rect(10, 10, 91, 20)) },
			"outside its page"},
		{"trim off the bleed", func(d *Document) { d.AddPage(100, 100); d.SetBoxes(good, rect(10, 11, 20, 20)) },
			"outside its bleed"},
		{"trim negative", func(d *Document) { d.AddPage(100, 100); d.SetBoxes(rect(10, 10, -1, 5), good) }, "above zero"},
		{"gofpdf's own", func(d *Document) { d.AddPage(100, 100); d.canvas.SetFont("Nonesuch", "", 10) }, "nonesuch"},
		{"clip left open", func(d *Document) { d.AddPage(100, 100); d.canvas.ClipRect(1, 1, 5, 5, false) }, "clip"},
		{"drawn before the first page", func(d *Document) { d.canvas.Line(1, 1, 5, 5); d.AddPage(100, 100) },
			"before the first page"},
		{"encrypted", func(d *Document) { d.AddPage(100, 100); d.canvas.SetProtection(0, "a", "b") }, "protection"},
		{"the first sticks", func(d *Document) { d.AddPage(-1, 100); d.AddPage(100, 100); d.Place(layout.Rect{}) },
			"-1 x 100"},
		{"picture drawn on the canvas", func(d *Document) {
			d.AddPage(100, 100)
			d.Place(good)
			drawStub(d, 1, 2)
		}, "through the document"},
		{"stub drawn on the canvas", func(d *Document) {
			d.AddPage(100, 100)
			drawStub(d, 3, 1)
		}, "through the document"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d := New("errors")
			test.draw(d)
			var out bytes.Buffer
			err := d.Stream(&out, none)
			require.ErrorContains(t, err, test.want)
			require.Zero(t, out.Len(), "nothing is written before the drawing is known to be good")
		})
	}
}

// drawStub draws a picture on the canvas, past the document.
func drawStub(d *Document, widthPx, heightPx int) {
	p, err := pngFile(image.NewGray(image.Rect(0, 0, widthPx, heightPx)))
	d.canvas.SetError(err)
	d.canvas.RegisterImageOptionsReader("own", pngOptions, bytes.NewReader(p))
	d.canvas.ImageOptions("own", 5, 5, 5, 5, false, pngOptions, 0, "")
}

func TestADocumentIsStreamedOnce(t *testing.T) {
	d := New("once")
	d.AddPage(50, 50)
	streamed(t, d, none)
	require.ErrorContains(t, d.Stream(&bytes.Buffer{}, none), "streamed before")
}

// A document that is only gone through takes everything and draws nothing.
func TestUndrawn(t *testing.T) {
	d := Undrawn()
	d.AddPage(100, 100)
	d.Scale(0.5, 0.5, layout.Point{})
	at := layout.Rect{XMM: 10, YMM: 10, WidthMM: 20, HeightMM: 20}
	require.Zero(t, d.Place(at))
	d.Put(Sans(10), 10, 10, "gone through")
	d.PutUpward(Sans(10), 10, 10, "gone through")
	d.PutLine(Sans(10), 10, 10, Sans(10).Wrap(100, "gone through")[0])
	d.Line(0, 0, 10, 10, Pen{WidthMM: 1})
	d.Frame(at, Pen{WidthMM: 1})
	d.Fill(at, Grey(0))
	d.Polygon(Grey(0), Pen{}, layout.Point{}, layout.Point{XMM: 10}, layout.Point{YMM: 10})
	d.Outline([]layout.Point{{}, {XMM: 10}}, Pen{WidthMM: 1})
	d.Oval(10, 10, 5, 5, Grey(0), Pen{WidthMM: 1})
	d.Clipped(at, func() { t.Fatal("drawn") })
	require.NoError(t, d.Err())
	require.True(t, d.IsUndrawn())
	require.False(t, New("").IsUndrawn())
	require.ErrorContains(t, d.Stream(io.Discard, nil), "only gone through")
}
