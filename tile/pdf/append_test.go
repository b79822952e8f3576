package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"regexp"
	"runtime"
	"strconv"
	"sync"
	"testing"

	"github.com/jung-kurt/gofpdf"
	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/colour"
	"dropsheet/tile/pdf/pdftest"
)

var pngOptions = gofpdf.ImageOptions{ImageType: "png"}

// rect is a rectangle of the page by its top-left corner and its size, in mm.
func rect(x, y, w, h float64) layout.Rect {
	return layout.Rect{XMM: x, YMM: y, WidthMM: w, HeightMM: h}
}

func pngFile(img image.Image) ([]byte, error) {
	var b bytes.Buffer
	err := png.Encode(&b, img)
	return b.Bytes(), err
}

// tenPerMM renders a tenth of a millimetre to the pixel.
var tenPerMM = int(math.Round(units.PerMM(10).PixelsPerInch()))

// fill sets every pixel.
func fill(img *image.RGBA, c color.RGBA) *image.RGBA {
	for i := 0; i < len(img.Pix); i += 4 {
		img.Pix[i], img.Pix[i+1], img.Pix[i+2], img.Pix[i+3] = c.R, c.G, c.B, c.A
	}
	return img
}

// quarters is a picture with four flat quarters, which shows any turn or mirroring. Its origin isn't 0, 0.
func quarters() *image.RGBA {
	img := image.NewRGBA(image.Rect(7, 9, 7+160, 9+96))
	for y := range 96 {
		for x := range 160 {
			c := [2][2]color.RGBA{
				{{255, 0, 0, 255}, {0, 255, 0, 255}},
				{{0, 0, 255, 255}, {119, 119, 119, 255}},
			}[y/48][x/80]
			img.SetRGBA(7+x, 9+y, c)
		}
	}
	return img
}

func toYCbCr(src *image.RGBA) *image.YCbCr {
	img := image.NewYCbCr(src.Bounds(), image.YCbCrSubsampleRatio420)
	for y := src.Rect.Min.Y; y < src.Rect.Max.Y; y++ {
		for x := src.Rect.Min.X; x < src.Rect.Max.X; x++ {
			c := src.RGBAAt(x, y)
			yy, cb, cr := color.RGBToYCbCr(c.R, c.G, c.B)
			img.Y[img.YOffset(x, y)], img.Cb[img.COffset(x, y)], img.Cr[img.COffset(x, y)] = yy, cb, cr
		}
	}
	return img
}

func toGray(src *image.RGBA) *image.Gray {
	img := image.NewGray(src.Bounds())
	for y := src.Rect.Min.Y; y < src.Rect.Max.Y; y++ {
		for x := src.Rect.Min.X; x < src.Rect.Max.X; x++ {
			img.Set(x, y, src.RGBAAt(x, y))
		}
	}
	return img
}

// The picture's corners must land within 0.1 mm and its pixels come out within 2 levels: PDFium converts from
// our profile to its own sRGB, JPEG at quality 95 rounds, and neither may do more.
func TestPicturesLandWhereTheyWerePlaced(t *testing.T) {
	jpeg := func(img image.Image) (Picture, error) { return EncodeJPEG(img, 95, image.YCbCrSubsampleRatio420) }
	tests := []struct {
		name   string
		img    image.Image
		encode func(image.Image) (Picture, error)
	}{
		{"RGB as JPEG", quarters(), jpeg},
		{"YCbCr as JPEG", toYCbCr(quarters()), jpeg},
		{"grey as JPEG", toGray(quarters()), jpeg},
		{"RGB as Flate", quarters(), EncodeFlate},
		{"YCbCr as Flate", toYCbCr(quarters()), EncodeFlate},
		{"grey as Flate", toGray(quarters()), EncodeFlate},
	}
	const xMM, yMM, wMM, hMM = 12.3, 7.9, 40.0, 24.0
	d := New("places")
	for range tests {
		d.AddPage(90, 60)
		d.Place(rect(xMM, yMM, wMM, hMM))
	}
	data := streamed(t, d, func(id PictureID) (Picture, error) { return tests[id-1].encode(tests[id-1].img) })
	doc := pdftest.Open(t, data)
	for i, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			drawn := doc.Render(i+1, 2*tenPerMM)
			// PDFium stretches a picture to whole device pixels, here of 0.05 mm.
			got := inked(drawn)
			require.InDeltaSlice(t, []float64{xMM, yMM, xMM + wMM, yMM + hMM},
				[]float64{float64(got.Min.X) / 20, float64(got.Min.Y) / 20, float64(got.Max.X) / 20, float64(got.Max.Y) / 20},
				0.075)
			b := test.img.Bounds()
			for _, at := range []image.Point{{20, 20}, {140, 20}, {20, 76}, {140, 76}, {70, 40}, {90, 56}} {
				want := color.RGBAModel.Convert(test.img.At(b.Min.X+at.X, b.Min.Y+at.Y)).(color.RGBA)
				// The middle of that pixel: 160 pixels on 40 mm are 5 device pixels each.
				got := drawn.RGBAAt(int(xMM*20+(float64(at.X)+0.5)*5), int(yMM*20+(float64(at.Y)+0.5)*5))
				requireNear(t, want, got, 2, "pixel %v", at)
			}
		})
	}
}

// The transformation in the page's content is the exact one: PDFium's pixels can't show a hundredth of a millimetre.
func TestPlacementInThePageContent(t *testing.T) {
	d := New("exact")
	d.canvas.SetCompression(false)
	d.AddPage(210, 297)
	d.Place(rect(12.345, 7.891, 180.123, 250.004))
	f := check(t, streamed(t, d, func(PictureID) (Picture, error) { return EncodeFlate(quarters()) }))
	var content string
	for _, text := range f.with(` cm /I`) {
		content += text
	}
	found := regexp.MustCompile(`q (\S+) 0 0 (\S+) (\S+) (\S+) cm /I\w+ Do Q`).FindStringSubmatch(content)
	require.Len(t, found, 5)
	// By hand, mm x 72 / 25.4 (ISO 32000-1, 8.3.2.3, recalled from memory): width, height, x, and y = 297 -
	// 7.891 - 250.004 = 39.105 mm from below.
	for i, want := range []float64{510.58488, 708.67276, 34.99370, 110.84882} {
		got, err := strconv.ParseFloat(found[i+1], 64)
		require.NoError(t, err)
		require.InDelta(t, want, got, 0.00002)
	}
}

// inked returns the smallest rectangle with all pixels that are not white; those nearer to white than to ink
// don't count.
func inked(img *image.RGBA) image.Rectangle {
	var box image.Rectangle
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if c := img.RGBAAt(x, y); min(c.R, c.G, c.B) < 190 {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return box
}

func requireNear(t *testing.T, want, got color.RGBA, levels float64, what string, args ...any) {
	t.Helper()
	require.InDeltaSlice(t, []float64{float64(want.R), float64(want.G), float64(want.B)},
		[]float64{float64(got.R), float64(got.G), float64(got.B)}, levels, fmt.Sprintf(what, args...)+
			fmt.Sprintf(": got %v, want %v", got, want))
}

// thirty draws 30 pictures of three kinds with boxes, text and translucent ink, to give every map a chance to
// show its order.
func thirty(t *testing.T) []byte {
	d := New("same (again)")
	for i := range 30 {
		d.AddPage(60+float64(i), 50)
		d.SetBoxes(rect(6, 5, 40, 30), rect(4, 3, 50, 40))
		c := d.canvas
		for _, font := range []string{"Helvetica", "Times", "Courier"} {
			c.SetFont(font, "", 9)
			c.Text(5, 45, fmt.Sprintf("sheet %d", i))
		}
		c.SetAlpha(0.5+float64(i)/100, "Normal")
		c.Line(0, 0, 10, 10)
		d.Place(rect(10, 10, 20, 20))
	}
	return streamed(t, d, func(id PictureID) (Picture, error) {
		img := fill(image.NewRGBA(image.Rect(0, 0, 8, 8)), color.RGBA{byte(id), byte(2 * id), 9, 255})
		switch id % 3 {
		case 0:
			return EncodeFlate(toGray(img))
		case 1:
			return EncodeFlate(img)
		}
		return EncodeJPEG(img, 90, image.YCbCrSubsampleRatio420)
	})
}

func TestSameInputSameBytes(t *testing.T) {
	first := thirty(t)
	for run := range 19 {
		require.True(t, bytes.Equal(first, thirty(t)), "run %d differs", run+2)
	}
}

// Under the race detector this also shows that documents share nothing.
func TestDocumentsSideBySide(t *testing.T) {
	stream := func() []byte {
		d := New("fonts")
		d.AddPage(50, 50)
		d.Put(Sans(12), 5, 10, "2 × 3 → R2C3")
		d.Place(rect(10, 20, 20, 20))
		var out bytes.Buffer
		if err := d.Stream(&out, func(PictureID) (Picture, error) { return EncodeFlate(quarters()) }); err != nil {
			t.Error(err)
		}
		return out.Bytes()
	}
	var together [4][]byte
	var group sync.WaitGroup
	for i := range together {
		group.Go(func() { together[i] = stream() })
	}
	group.Wait()
	alone := stream()
	check(t, alone)
	require.Equal(t, "2 × 3 → R2C3", pdftest.Open(t, alone).Text(1))
	for _, data := range together {
		require.True(t, bytes.Equal(alone, data))
	}
}

func TestTwoHundredPagesInOrderInFlatMemory(t *testing.T) {
	const pages, pictureBytes = 200, 1 << 20
	d := New("many")
	for range pages {
		d.AddPage(210, 297)
		d.Place(rect(0, 0, 210, 297))
	}
	var asked []PictureID
	var lowest, highest uint64 = math.MaxUint64, 0
	err := d.Stream(io.Discard, func(id PictureID) (Picture, error) {
		asked = append(asked, id)
		if id > 1 && id%10 == 1 { // what's live now is the drawn pages, and whatever Stream keeps of the pictures before
			var m runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&m)
			lowest, highest = min(lowest, m.HeapAlloc), max(highest, m.HeapAlloc)
		}
		return Picture{WidthPx: 1024, HeightPx: 1024, Gray: true, Filter: DCT, Data: make([]byte, pictureBytes)}, nil
	})
	require.NoError(t, err)
	require.Len(t, asked, pages)
	for i, id := range asked {
		require.Equal(t, PictureID(i+1), id)
	}
	require.Less(t, highest-lowest, uint64(pictureBytes), "live memory must not grow by even one picture over 190 of them")
}

func TestEachPageShowsItsOwnPicture(t *testing.T) {
	const pages = 200
	d := New("order")
	for range pages {
		d.AddPage(20, 10)
		d.Place(rect(0, 0, 20, 10))
	}
	colour := func(page int) color.RGBA { return color.RGBA{byte(page), byte(255 - page), byte(7 * page), 255} }
	doc := pdftest.Open(t, streamed(t, d, func(id PictureID) (Picture, error) {
		return EncodeFlate(fill(image.NewRGBA(image.Rect(0, 0, 2, 2)), colour(int(id))))
	}))
	require.Equal(t, pages, doc.PageCount())
	for page := 1; page <= pages; page++ {
		requireNear(t, colour(page), doc.Render(page, tenPerMM/10).RGBAAt(10, 5), 2, "page %d", page)
	}
}

func TestSeveralPicturesOnAPageUnderATransformation(t *testing.T) {
	d := New("turned")
	d.AddPage(100, 100)
	d.Place(rect(-10, -10, 30, 30)) // runs past the page
	d.canvas.TransformBegin()
	d.canvas.TransformRotate(180, 50, 50)
	d.Place(rect(0, 0, 16, 9.6))
	d.canvas.TransformEnd()
	drawn := pdftest.Open(t, streamed(t, d, func(id PictureID) (Picture,
		error) {
		return EncodeFlate(quarters())
	})).Render(1, tenPerMM)
	requireNear(t, color.RGBA{119, 119, 119, 255}, drawn.RGBAAt(100, 100), 2, "lower right quarter of the first")
	requireNear(t, color.RGBA{255, 255, 255, 255}, drawn.RGBAAt(205, 100), 0, "beside the first")
	requireNear(t, color.RGBA{255, 0, 0, 255}, drawn.RGBAAt(980, 980), 2,
		"upper left quarter of the second, turned to the lower right")
}

func TestCatalogAsksForUnscaledPrintingAndKeepsTheRest(t *testing.T) {
	d := New("catalog")
	d.canvas.SetDisplayMode("fullpage", "single")
	d.AddPage(50, 50)
	d.canvas.Bookmark("here", 0, 0)
	f := check(t, streamed(t, d, none))
	catalog := f.catalog()
	require.Equal(t, "None", entry(t, catalog, `/ViewerPreferences <</PrintScaling /(\w+)>>`))
	require.Equal(t, "1.6", entry(t, catalog, `/Version /([0-9.]+)`))
	require.Equal(t, "1", entry(t, catalog, `/Pages (\d+) 0 R`))
	require.Equal(t, "SinglePage", entry(t, catalog, `/PageLayout /(\w+)`))
	require.Equal(t, "UseOutlines", entry(t, catalog, `/PageMode /(\w+)`))
	require.Contains(t, catalog, "/Outlines ")
	require.Contains(t, catalog, "/OpenAction ")
	require.Len(t, f.trailers, 2)
	require.Contains(t, f.trailers[0], "/Info ")
	id := regexp.MustCompile(`/ID \[<([0-9a-f]{32})> <([0-9a-f]{32})>\]`).FindStringSubmatch(f.trailers[0])
	require.Len(t, id, 3)
	require.Equal(t, id[1], id[2])
}

func TestDatesAreFixed(t *testing.T) {
	d := New("dates")
	d.AddPage(50, 50)
	f := check(t, streamed(t, d, none))
	info := f.objects[toInt(entry(t, f.trailers[0], `/Info (\d+) 0 R`))]
	require.Equal(t, "20000101000000", entry(t, info, `/CreationDate \(D:(\d+)\)`))
	require.Equal(t, "20000101000000", entry(t, info, `/ModDate \(D:(\d+)\)`))
}

func TestFilesDifferInID(t *testing.T) {
	ids := map[string]bool{}
	for _, title := range []string{"a", "b"} {
		for level := range 2 {
			d := New(title)
			d.AddPage(50, 50)
			d.Place(rect(0, 0, 50, 50))
			f := check(t, streamed(t, d, func(PictureID) (Picture, error) {
				return EncodeFlate(fill(image.NewRGBA(image.Rect(0, 0, 2, 2)), color.RGBA{byte(level), 0, 0, 255}))
			}))
			ids[entry(t, f.trailers[0], `/ID \[<([0-9a-f]+)>`)] = true
		}
	}
	require.Len(t, ids, 4)
}

// Text and drawing that look like objects, tables and trailers must not be taken for any.
func TestLookalikesInTheDrawing(t *testing.T) {
	d := New("4 0 obj <</Subtype /Image /Width 1 /Height 1>> xref 0 1 trailer startxref 9 %%EOF")
	d.canvas.SetCompression(false)
	d.canvas.SetKeywords("/Subtype /Image /Width 2 /Height 1 >> endobj", false)
	d.AddPage(50, 50)
	d.canvas.SetFont("Helvetica", "", 8)
	d.canvas.Text(1, 5, "5 0 obj\n<</Subtype /Image\n/Width 1\n/Height 1>>\nstream\nxref\n0 1\nstartxref\n9\n%%EOF")
	first := d.Place(rect(10, 10, 10, 10))
	second := d.Place(rect(30, 10, 10, 10))
	colours := map[PictureID]color.RGBA{first: {200, 0, 0, 255}, second: {0, 0, 200, 255}}
	doc := pdftest.Open(t, streamed(t, d, func(id PictureID) (Picture, error) {
		return EncodeFlate(fill(image.NewRGBA(image.Rect(0, 0, 2, 2)), colours[id]))
	}))
	drawn := doc.Render(1, tenPerMM)
	requireNear(t, colours[first], drawn.RGBAAt(150, 150), 2, "first")
	requireNear(t, colours[second], drawn.RGBAAt(350, 150), 2, "second")
}

var errBroken = errors.New("broken")

func TestErrorsWhileStreaming(t *testing.T) {
	good := Picture{WidthPx: 1, HeightPx: 1, Filter: DCT, Data: make([]byte, 100_000)}
	bad := func(change func(*Picture)) func(PictureID) (Picture, error) {
		return func(id PictureID) (Picture, error) {
			p := good
			if id == 2 {
				change(&p)
			}
			return p, nil
		}
	}
	tests := []struct {
		name string
		next func(PictureID) (Picture, error)
		want string
	}{
		{"from the caller", func(id PictureID) (Picture, error) { return good, map[PictureID]error{2: errBroken}[id] },
			"picture 2 of 3: broken"},
		{"no width", bad(func(p *Picture) { p.WidthPx = 0 }), "picture 2 of 3: a size of 0 x 1"},
		{"no height", bad(func(p *Picture) { p.HeightPx = -1 }), "1 x -1"},
		{"no data", bad(func(p *Picture) { p.Data = nil }), "no data"},
		{"no filter", bad(func(p *Picture) { p.Filter = 0 }), "filter 0"},
		{"profile for grey", bad(func(p *Picture) { p.Profile = colour.SRGBProfile(true) }), `"GRAY"`},
		{"profile cut off", bad(func(p *Picture) { p.Profile = colour.SRGBProfile(false)[:500] }), "and has 500"},
		{"profile empty", bad(func(p *Picture) { p.Profile = []byte{} }),
			"its colour profile can't be used: it has only 0 bytes"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d := New("bad")
			d.AddPage(50, 50)
			for range 3 {
				d.Place(rect(0, 0, 50, 50))
			}
			require.ErrorContains(t, d.Stream(io.Discard, test.next), test.want)
		})
	}
}

// failing takes so many bytes, then fails.
type failing struct{ left int }

func (f *failing) Write(p []byte) (int, error) {
	if len(p) > f.left {
		n := f.left
		f.left = 0
		return n, errBroken
	}
	f.left -= len(p)
	return len(p), nil
}

func TestAFailingWriterStopsTheStream(t *testing.T) {
	const pictureBytes, pictures = 100_000, 10
	stream := func(w io.Writer) (asked int, err error) {
		d := New("full disk")
		d.AddPage(50, 50)
		for range pictures {
			d.Place(rect(0, 0, 50, 50))
		}
		err = d.Stream(w, func(PictureID) (Picture, error) {
			asked++
			return Picture{WidthPx: 1, HeightPx: 1, Filter: DCT, Data: make([]byte, pictureBytes)}, nil
		})
		return asked, err
	}
	var whole bytes.Buffer
	_, err := stream(&whole)
	require.NoError(t, err)
	tests := []struct {
		name            string
		room, mostAsked int
	}{
		{"none", 0, 1},
		{"the drawn pages", 8000, 1},
		{"one picture and a half", pictureBytes * 3 / 2, 2},
		{"all but the last byte", whole.Len() - 1, pictures},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			asked, err := stream(&failing{test.room})
			require.ErrorIs(t, err, errBroken)
			require.LessOrEqual(t, asked, test.mostAsked, "no picture is asked for once writing has failed")
		})
	}
	asked, err := stream(&failing{whole.Len()})
	require.NoError(t, err)
	require.Equal(t, pictures, asked)
}

func TestProfilesAreWrittenOnce(t *testing.T) {
	custom := bytes.Clone(colour.SRGBProfile(false))
	custom[100] ^= 1 // a reserved byte: another profile that is as good
	d := New("profiles")
	d.AddPage(50, 50)
	for range 12 {
		d.Place(rect(0, 0, 50, 50))
	}
	f := check(t, streamed(t, d, func(id PictureID) (Picture, error) {
		img := quarters()
		if id%3 == 0 {
			return EncodeFlate(toGray(img))
		}
		p, err := EncodeFlate(img)
		if id%3 == 1 {
			p.Profile = bytes.Clone(custom) // equal by value, not the same slice
		}
		return p, err
	}))
	profiles := f.with(`/N [13] /Alternate`)
	require.Len(t, profiles, 3)
	var sums []string
	for number := range profiles {
		sums = append(sums, fmt.Sprintf("%x", sha256.Sum256(f.unpacked(number))))
	}
	require.ElementsMatch(t, sums, []string{
		fmt.Sprintf("%x", sha256.Sum256(colour.SRGBProfile(false))),
		fmt.Sprintf("%x", sha256.Sum256(colour.SRGBProfile(true))),
		fmt.Sprintf("%x", sha256.Sum256(custom)),
	})
	pictures := f.with(`/Subtype /Image`)
	require.Len(t, pictures, 12)
	for _, text := range pictures {
		require.Contains(t, profiles, toInt(entry(t, text, `/ColorSpace \[/ICCBased (\d+) 0 R\]`)))
	}
}
