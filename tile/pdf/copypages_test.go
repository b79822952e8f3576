package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/pdf/pdftest"
)

// paintedFile is a file of pages each of another size, with another picture and other lines; the last has neither.
func paintedFile(t *testing.T) []byte {
	t.Helper()
	d := New("some pages")
	const pages = 5
	for i := range pages {
		d.AddPage(60+float64(i), 90)
		d.SetBoxes(rect(10, 10, 40, 60), rect(8, 8, 44, 64))
		if i < pages-1 {
			d.Place(rect(10, 10, 30, 20+float64(i)))
			d.canvas.Line(5, float64(40+i), 50, 60)
			d.Put(Sans(9), 10, 80, fmt.Sprint("page ", i+1))
		}
	}
	var file bytes.Buffer
	require.NoError(t, d.Stream(&file, func(id PictureID) (Picture, error) {
		m := image.NewRGBA(image.Rect(0, 0, 90, 60))
		return EncodeFlate(fill(m, color.RGBA{uint8(40 * id), 90, uint8(250 - 50*id), 255}))
	}))
	return file.Bytes()
}

// The pages chosen look as they did, in the order asked for, with their boxes, in a sound file that has no other's
// picture.
func TestCopyPages(t *testing.T) {
	data := paintedFile(t)
	was := pdftest.Open(t, data)
	for _, c := range []struct {
		pages    []int
		pictures int
	}{{[]int{3}, 1}, {[]int{5}, 0}, {[]int{4, 2, 4, 4}, 2}, {[]int{1, 2, 3, 4, 5}, 4}} {
		t.Run(fmt.Sprint(c.pages), func(t *testing.T) {
			var out, again bytes.Buffer
			require.NoError(t, CopyPages(&out, bytes.NewReader(data), int64(len(data)), c.pages))
			require.NoError(t, CopyPages(&again, bytes.NewReader(data), int64(len(data)), c.pages))
			require.True(t, bytes.Equal(out.Bytes(), again.Bytes()))
			file := check(t, out.Bytes())
			require.Len(t, file.with(`/Subtype /Image`), c.pictures)
			require.Len(t, file.with(`/Type /Page\n`), len(c.pages))
			require.Contains(t, file.catalog(), "/PrintScaling /None")
			is := pdftest.Open(t, out.Bytes())
			require.Equal(t, len(c.pages), is.PageCount())
			require.Equal(t, was.Title(), is.Title())
			for i, page := range c.pages {
				require.Equal(t, was.Render(page, 50).Pix, is.Render(i+1, 50).Pix)
				require.Equal(t, was.PageBoxes(page), is.PageBoxes(i+1))
			}
		})
	}
}

// A page that is not there, and a file that is not whole or not ours, is refused.
func TestCopyPagesRefuses(t *testing.T) {
	data := paintedFile(t)
	for _, page := range []int{0, 6, -1} {
		require.ErrorContains(t, CopyPages(new(bytes.Buffer), bytes.NewReader(data), int64(len(data)), []int{page}),
			"the file has 5 pages")
	}
	for cut := 0; cut < len(data); cut += 7 {
		require.Error(t, CopyPages(new(bytes.Buffer), bytes.NewReader(data[:cut]), int64(cut), []int{1}), cut)
	}
	for at := 0; at < len(data); at += 11 { // spoilt anywhere, it gives an error or a file, and never panics
		spoilt := bytes.Clone(data)
		spoilt[at] ^= 0x15
		if err := CopyPages(new(bytes.Buffer), bytes.NewReader(spoilt), int64(len(spoilt)), []int{2, 2}); err != nil {
			require.NotEmpty(t, err.Error())
		}
	}
}
