//go:build browser

package rehearsal

import (
	"bytes"
	"flag"
	"image/jpeg"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "take the README's picture of the page anew")

// The README's picture is taken of the example: two takes on the line, the second on the bench.
func TestReadmePicture(t *testing.T) {
	const quality = 88
	examples := filepath.Join("..", "..", "..", "examples", "harbour")
	picture := filepath.Join(examples, "rehearsal.jpg")
	if !*update {
		require.FileExists(t, picture)
		return
	}
	folder := t.TempDir()
	require.NoError(t, os.Link(filepath.Join(examples, "harbour.jpg"), filepath.Join(folder, "harbour.jpg")))
	p := open(t, filepath.Join(folder, "harbour.jpg"), 1280, 800)
	p.click("#keep")
	p.click("#stops button:nth-child(4)")
	p.until(`document.querySelectorAll(".take:not(.on)").length === 1`)
	p.finest()
	p.click("#keep")
	p.until(`document.querySelectorAll(".take").length === 2`)
	m, err := chromedp.Run(p.ctx, chromedp.CaptureScreenshot())
	require.NoError(t, err)
	shot, err := png.Decode(bytes.NewReader(m))
	require.NoError(t, err)
	var file bytes.Buffer
	require.NoError(t, jpeg.Encode(&file, shot, &jpeg.Options{Quality: quality}))
	require.NoError(t, os.WriteFile(picture, file.Bytes(), 0o644))
}
