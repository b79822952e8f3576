package page

import (
	"bytes"
	"fmt"
	"image/color"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/klippa-app/go-pdfium/requests"
	"github.com/stretchr/testify/require"

	"dropsheet/tile/hint"
	"dropsheet/tile/pdfium"
)

// pdf writes a file by hand (ISO 32000-1, 7.5, recalled from memory) whose pages hold these entries and contents.
// Its cross-reference table is left out: readers rebuild it.
func pdf(pages ...[2]string) []byte {
	var b bytes.Buffer
	kids := ""
	for i := range pages {
		kids += fmt.Sprintf("%d 0 R ", 10+2*i)
	}
	fmt.Fprintf(&b, "%%PDF-1.7\n1 0 obj\n<</Type/Catalog/Pages 2 0 R>>\nendobj\n2 0 obj\n"+
		"<</Type/Pages/Count %d/Kids[%s]>>\nendobj\n3 0 obj\n<</Type/Font/Subtype/Type1"+
		"/BaseFont/Helvetica>>\nendobj\n", len(pages), kids)
	for i, p := range pages {
		fmt.Fprintf(&b, "%d 0 obj\n<</Type/Page/Parent 2 0 R/Contents %d 0 R/Resources<</Font<</F 3 0 R>>>>%s>>\nendobj\n"+
			"%d 0 obj\n<</Length %d>>\nstream\n%s\nendstream\nendobj\n", 10+2*i, 11+2*i, p[0], 11+2*i, len(p[1]), p[1])
	}
	b.WriteString("trailer\n<</Root 1 0 R>>\n%%EOF\n")
	return b.Bytes()
}

var white = color.RGBA{0xff, 0xff, 0xff, 0xff}

const a6 = "/MediaBox[0 0 300 420]"

func open(t *testing.T, data []byte) *File {
	t.Helper()
	f, err := Open(data)
	require.NoError(t, err)
	t.Cleanup(f.Close)
	return f
}

// A red corner at the page's bottom left goes where the page's box and rotation put it.
func TestPagesStandAsReadersShowThem(t *testing.T) {
	const corner = "1 0 0 rg 0 0 100 100 re f 0 0 1 rg 200 320 100 100 re f"
	f := open(t, pdf(
		[2]string{a6, corner},
		[2]string{a6 + "/Rotate 90", corner},
		[2]string{a6 + "/CropBox[0 0 100 200]", corner},
		[2]string{a6, "0.5 g /F 40 Tf"},
	))
	require.Equal(t, 4, f.Pages())
	red, blue, bare := color.RGBA{255, 0, 0, 255}, color.RGBA{0, 0, 255, 255}, color.RGBA{255, 255, 255, 255}
	for _, c := range []struct {
		name        string
		page        int
		wMM, hMM    float64
		widthPx     int
		heightPx    int
		topLeft     color.RGBA
		topRight    color.RGBA
		bottomLeft  color.RGBA
		bottomRight color.RGBA
	}{
		// 300 x 420 points are 105.8 x 148.2 mm (a point is 1/72 inch, ISO 32000-1, 8.3.2.3)
		{"plain", 1, 105.833, 148.167, 150, 210, bare, blue, red, bare},
		{"turned to the right", 2, 148.167, 105.833, 210, 150, red, bare, bare, blue},
		{"cut to its crop box", 3, 35.278, 70.556, 50, 100, bare, bare, red, red},
		{"nothing on it", 4, 105.833, 148.167, 30, 42, bare, bare, bare, bare},
	} {
		t.Run(c.name, func(t *testing.T) {
			w, h, err := f.SizeMM(c.page)
			require.NoError(t, err)
			require.InDelta(t, c.wMM, w, 0.001)
			require.InDelta(t, c.hMM, h, 0.001)
			got, err := f.Render(c.page, c.widthPx, c.heightPx, white)
			require.NoError(t, err)
			right, bottom := c.widthPx-3, c.heightPx-3
			require.Equal(t, []color.RGBA{c.topLeft, c.topRight, c.bottomLeft, c.bottomRight},
				[]color.RGBA{got.RGBAAt(2, 2), got.RGBAAt(right, 2), got.RGBAAt(2, bottom), got.RGBAAt(right, bottom)})
		})
	}
}

// Bands join without a step, whatever their height, and the same file gives the same pixels. A line that goes past a
// band is cut off there before it is drawn, and its new end is rounded to 1/256 of a pixel: along an edge that moves
// the share of a pixel that it covers by a few 256ths.
func TestBandsJoin(t *testing.T) {
	var content strings.Builder
	for i := range 60 {
		fmt.Fprintf(&content, "%.2f 0 %.2f RG %d w %d 0 m %d 420 l S\n", float64(i)/60, 1-float64(i)/60, 1+i%4, 300-5*i, 7*i)
	}
	content.WriteString("BT /F 60 Tf 20 200 Td (Quay) Tj ET")
	f := open(t, pdf([2]string{a6, content.String()}))
	whole, err := f.Render(1, 600, 840, white)
	require.NoError(t, err)
	again, err := f.Render(1, 600, 840, white)
	require.NoError(t, err)
	require.True(t, bytes.Equal(whole.Pix, again.Pix))
	const mostLevels = 4 // of 255
	for _, rows := range []int{1, 100, 839} {
		banded, err := f.Render(1, 600, 840, white)
		require.NoError(t, err)
		clear(banded.Pix)
		require.NoError(t, f.renderBands(1, banded, rows, white))
		most := uint8(0)
		for i, level := range whole.Pix {
			most = max(most, max(level, banded.Pix[i])-min(level, banded.Pix[i]))
		}
		require.LessOrEqual(t, most, uint8(mostLevels), "%d rows at a time", rows)
	}
}

func TestWhatIsRefused(t *testing.T) {
	for _, c := range []struct {
		name string
		data []byte
		says string
	}{
		{"nothing", nil, "can't be read"},
		{"no PDF", []byte("%PDF-1.7\nnothing more"), "can't be read"},
		{"no page", pdf(), "can't be read"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Open(c.data)
			require.ErrorContains(t, err, c.says)
		})
	}
	f := open(t, pdf([2]string{"/MediaBox[0 0 3000000 3000000]", ""}, [2]string{"/MediaBox[0 0 0.1 0.1]", ""}))
	for page := 1; page <= f.Pages(); page++ {
		_, _, err := f.SizeMM(page)
		require.ErrorContains(t, err, "save it on a page of a usual size")
	}
	_, err := f.Render(3, 10, 10, white)
	require.ErrorContains(t, err, "no page 3\nhint: take 1 to 2")
}

// What a page leaves bare shows the ground, and a page that is painted all over shows none.
func TestGround(t *testing.T) {
	const painted = "1 1 1 rg -1 -1 302 422 re f 1 0 0 rg 0 0 100 100 re f"
	f := open(t, pdf([2]string{a6, "1 0 0 rg 0 0 100 100 re f"}, [2]string{a6, painted}))
	navy := color.RGBA{0, 0, 0x80, 0xff}
	for page, want := range map[int]color.RGBA{1: navy, 2: white} {
		drawn, err := f.Render(page, 60, 84, navy)
		require.NoError(t, err)
		require.Equal(t, want, drawn.RGBAAt(50, 5))
		require.Equal(t, color.RGBA{0xff, 0, 0, 0xff}, drawn.RGBAAt(5, 80))
		bare, err := f.BareGround(page)
		require.NoError(t, err)
		require.Equal(t, page == 1, bare)
	}
}

// The file that is locked was made by qpdf 11.3.0 of the plain page of these tests:
// qpdf --static-id --encrypt secret owner 256 -- plain.pdf locked.pdf
func TestALockedFileIsRefused(t *testing.T) {
	data, err := os.ReadFile("testdata/locked.pdf")
	require.NoError(t, err)
	_, err = Open(data)
	require.EqualError(t, err, "this PDF is locked with a password\nhint: save a copy without one")
}

// PDFium itself can open files by their path, and those here it must not.
func TestNoFileOpens(t *testing.T) {
	f := open(t, pdf([2]string{a6, ""}))
	there := filepath.Join(t.TempDir(), "there.pdf")
	require.NoError(t, os.WriteFile(there, pdf([2]string{a6, ""}), 0o600))
	for _, path := range []string{there, "page_test.go", "/", "/proc/self/environ"} {
		_, err := f.engine.OpenDocument(&requests.OpenDocument{FilePath: &path})
		require.Error(t, err, path)
	}
}

// A page that asks for other things than ink gets none of them: its script, its link, its form field and its note leave
// the page as it is without them.
func TestNothingIsFollowed(t *testing.T) {
	const content = "0 1 0 rg 0 0 50 50 re f"
	plain := open(t, pdf([2]string{a6, content}))
	busy := open(t, pdf([2]string{a6 + "/AA<</O<</S/JavaScript/JS(app.alert\\(1\\))>>>>/Annots[" +
		"<</Type/Annot/Subtype/Link/Rect[0 0 300 420]/Border[0 0 9]/C[1 0 0]/A<</S/URI/URI(http://127.0.0.1:1/)>>>>" +
		"<</Type/Annot/Subtype/Square/Rect[60 60 200 200]/C[1 0 0]/IC[1 0 0]>>" +
		"<</Type/Annot/Subtype/Widget/FT/Tx/T(a)/V(text)/Rect[60 60 200 200]/MK<</BG[1 0 0]>>>>]", content}))
	want, err := plain.Render(1, 60, 84, white)
	require.NoError(t, err)
	got, err := busy.Render(1, 60, 84, white)
	require.NoError(t, err)
	require.Equal(t, want.Pix, got.Pix)
}

// Forms within forms that draw a thousand million squares end at the bound of memory, in words.
func TestAGreedyPageEnds(t *testing.T) {
	const levels, times = 9, 10
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n1 0 obj\n<</Type/Catalog/Pages 2 0 R>>\nendobj\n" +
		"2 0 obj\n<</Type/Pages/Count 1/Kids[3 0 R]>>\nendobj\n" +
		"3 0 obj\n<</Type/Page/Parent 2 0 R" + a6 + "/Contents 4 0 R/Resources<</XObject<</X 5 0 R>>>>>>\nendobj\n")
	for i := range levels + 1 {
		draw, head := strings.Repeat("/X Do ", times), ""
		if i > 0 {
			head = fmt.Sprintf("/Type/XObject/Subtype/Form/BBox[0 0 300 300]/Resources<</XObject<</X %d 0 R>>>>", 5+i)
		}
		if i == levels {
			draw = "0 0 10 10 re f"
		}
		fmt.Fprintf(&b, "%d 0 obj\n<<%s/Length %d>>\nstream\n%s\nendstream\nendobj\n", 4+i, head, len(draw), draw)
	}
	b.WriteString("trailer\n<</Root 1 0 R>>\n%%EOF\n")
	f, err := openWithin(b.Bytes(), pdfium.Bounds{MemoryMB: 32}) // the less there is, the sooner it ends
	require.NoError(t, err)
	t.Cleanup(f.Close)
	_, err = f.Render(1, 60, 84, white)
	require.ErrorContains(t, err, "save the page as a picture")
	wrong, _ := hint.Cut(err)
	require.NotContains(t, wrong, "\n")
}

// What comes from outside may be anything; whatever it is, the answer is pixels or an error in words.
func FuzzOpen(f *testing.F) {
	seeds := [][]byte{
		pdf([2]string{a6, "1 0 0 rg 0 0 100 100 re f BT /F 60 Tf 20 200 Td (Quay) Tj ET"}),
		pdf([2]string{a6 + "/Rotate 90", "q 300 0 0 420 0 0 cm BI /W 1 /H 1 /BPC 8 /CS /G ID x EI Q"}, [2]string{a6, ""}),
	}
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := Open(data)
		if err != nil {
			require.Contains(t, err.Error(), "save")
			return
		}
		defer file.Close()
		for page := 1; page <= min(file.Pages(), 3); page++ {
			w, h, err := file.SizeMM(page)
			if err != nil {
				continue
			}
			require.True(t, w > 0 && h > 0)
			_, err = file.Render(page, 40, 50, white)
			if err != nil {
				require.Contains(t, err.Error(), "save")
			}
		}
	})
}
