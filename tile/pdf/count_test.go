package pdf

import (
	"bytes"
	"image"
	"testing"

	"github.com/stretchr/testify/require"
)

// countedFile is a file of n pages, with a picture on each of the first few.
func countedFile(t *testing.T, n, pictures int) []byte {
	t.Helper()
	d := New("startxref trailer %%EOF")
	for i := range n {
		d.AddPage(210, 297)
		if i < pictures {
			d.Place(rect(10, 10, 50, 50))
		}
		d.SetBoxes(rect(10, 10, 50, 50), rect(8, 8, 54, 54))
	}
	var file bytes.Buffer
	require.NoError(t, d.Stream(&file, func(PictureID) (Picture,
		error) {
		return EncodeFlate(image.NewGray(image.Rect(0, 0, 90, 90)))
	}))
	return file.Bytes()
}

func TestCountPages(t *testing.T) {
	for _, c := range []struct{ pages, pictures int }{{1, 0}, {1, 1}, {9, 9}, {300, 2}} {
		data := countedFile(t, c.pages, c.pictures)
		n, err := CountPages(bytes.NewReader(data), int64(len(data)))
		require.NoError(t, err)
		require.Equal(t, c.pages, n)
	}
}

// What is not whole, or not ours, is never counted.
func TestCountPagesRefuses(t *testing.T) {
	data := countedFile(t, 5, 5)
	for cut := range data {
		_, err := CountPages(bytes.NewReader(data[:cut]), int64(cut))
		require.Error(t, err, "the first %d of %d bytes", cut, len(data))
	}
	for _, c := range []struct{ name, text string }{
		{"empty", ""}, {"words", "no PDF at all"}, {"an end alone", "%%EOF\n"},
		{"a trailer without a base", "trailer\n<</Size 4 /Root 1 0 R>>\nstartxref\n9\n%%EOF\n"},
		{"a base beyond the file", "trailer\n<</Size 4 /Prev 4000>>\nstartxref\n9\n%%EOF\n"},
		{"a base beyond reason", "trailer\n<</Size 4 /Prev 99999999999>>\nstartxref\n9\n%%EOF\n"},
		{"objects beyond reason", "trailer\n<</Size 99999999999999 /Prev 9>>\nstartxref\n9\n%%EOF\n"},
	} {
		_, err := CountPages(bytes.NewReader([]byte(c.text)), int64(len(c.text)))
		require.Error(t, err, c.name)
	}
}
