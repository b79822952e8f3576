package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/pdf"
	"dropsheet/tile/pdf/pdftest"
)

// writePages writes a PDF of two pages, of 90 x 60 and 200 x 100 mm, the second with a red top left quarter.
func writePages(t *testing.T) string {
	t.Helper()
	d := pdf.New("two pages")
	d.AddPage(90, 60)
	d.AddPage(200, 100)
	d.Fill(layout.Rect{WidthMM: 100, HeightMM: 50}, pdf.Shade{R: 255})
	var file bytes.Buffer
	require.NoError(t, d.Stream(&file, func(pdf.PictureID) (pdf.Picture, error) {
		return pdf.Picture{}, errors.New("none")
	}))
	path := filepath.Join(t.TempDir(), "pages.pdf")
	require.NoError(t, os.WriteFile(path, file.Bytes(), 0o600))
	return path
}

// A page of a PDF is an artwork like any other: drawn as finely as it is printed, turned, and the same when
// it is drawn again.
func TestAPageAsArtwork(t *testing.T) {
	art := writePages(t)
	words := []string{"--page", "2", "--print-size", "100x50mm", "--ppi", "100", "--paper", "a5", "--pixels", "60x40"}
	folder := mustMake(t, art, words...)
	j, err := job.Read(folder)
	require.NoError(t, err)
	require.Equal(t, 2, j.Artwork.Page)
	other := j
	other.Artwork.Page = 1
	require.NoError(t, j.Changed())
	require.Error(t, other.Changed(), "another page of the same size is another job")
	// 100 x 50 mm at 100 pixels to the inch of 25.4 mm: 393.7 x 196.9
	require.Equal(t, []int{394, 197}, []int{j.Artwork.WidthPx, j.Artwork.HeightPx})
	require.Equal(t, []int{394, 197}, []int{j.Print.Grid.WidthPx, j.Print.Grid.HeightPx})

	was := readFolder(t, folder)
	require.NoError(t, os.Remove(art), "its copy serves")
	_, stderr, code := dropsheet(t, "reprint", folder, "all")
	require.Equal(t, exitDone, code, stderr)
	require.True(t, bytes.Equal(was["sheets.pdf"], readFolder(t, folder)["reprint-ALL.pdf"]))
	stdout, _, code := dropsheet(t, "check", folder)
	require.Equal(t, exitDone, code, stdout)

	// The board hangs turned by half a turn, so the red quarter lies at its bottom right.
	page := pdftest.Open(t, was["sheets.pdf"]).Render(1, 50)
	at := func(xShare, yShare float64) bool {
		s, cell := j.Sheets[0].OnPage, j.Sheets[0].Cell
		const pxPerMM = 50 / 25.4
		c := page.RGBAAt(int((s.XMM+cell.WidthMM*xShare)*pxPerMM), int((s.YMM+cell.HeightMM*yShare)*pxPerMM))
		return c.R > 200 && c.G < 60
	}
	require.Equal(t, []bool{false, false, false, true}, []bool{at(0.25, 0.25), at(0.75, 0.25), at(0.25, 0.75),
		at(0.75, 0.75)})
}

func TestWhichPage(t *testing.T) {
	art, picture := writePages(t), ""
	picture, _ = jobtest.WritePattern(t, 60, 40)
	for _, c := range []struct {
		name string
		args []string
		code int
		says string
	}{
		{"none of several", []string{"size", art}, exitFailed,
			"this PDF has 2 pages\nhint: say which, with --page: 1 (90 x 60 mm), 2 (200 x 100 mm)"},
		{"one that is not there", []string{"make", art, "--page", "3"}, exitFailed,
			"there is no page 3\nhint: this PDF has 1 (90 x 60 mm), 2 (200 x 100 mm)"},
		{"of a picture", []string{"size", picture, "--page", "1"}, exitWrongWords, "is a picture\nhint: leave it out"},
		{"of nothing", []string{"size", "--page", "1"}, exitWrongWords, "name the PDF"},
		{"too fine a print for memory", []string{"make", art, "--page", "1", "--max-pixels", "100000", "--out",
			filepath.Join(t.TempDir(), "job")}, exitFailed, "hint: print it coarser, with --ppi auto or a lower --ppi"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, stderr, code := dropsheet(t, c.args...)
			require.Equal(t, c.code, code, stderr)
			require.Contains(t, stderr, c.says)
		})
	}
	stdout, stderr, code := dropsheet(t, "size", art, "--page", "2", "--print-size", "100x50mm")
	require.Equal(t, exitDone, code, stderr)
	require.NotContains(t, stderr, "soft or blocky", "it has no pixels of its own")
	require.Contains(t, stdout, "100 x 50 mm")
}
