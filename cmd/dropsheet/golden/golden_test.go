package golden

import (
	"flag"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/disintegration/imaging"
	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/pdf/pdftest"
)

var update = flag.Bool("update", false, "write the golden pictures anew, from what the program makes now")

func TestMain(m *testing.M) { programtest.Main(m) }

const (
	artwork = "../../../testdata/harbour.jpg"
	folder  = "../../../testdata/golden"
)

// What the program makes looks as it did when someone last looked at it: each picture is compared with the one
// of its name in testdata/golden, which says how each is made.
func TestGoldenPictures(t *testing.T) {
	made := makeAll(t)
	for name, got := range made {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(folder, name+".png")
			if *update {
				writePNG(t, path, got)
			}
			if err := compare(readPNG(t, path), got); err != nil {
				now := filepath.Join(t.ArtifactDir(), name+".png")
				writePNG(t, now, got)
				t.Errorf("%s is not as it was: %v\n"+
					"go test ./cmd/dropsheet/golden -artifacts leaves it as it is now in %s\n"+
					"go test ./cmd/dropsheet/golden -update takes it for the golden picture: look at it first", name, err, now)
			}
		})
	}
	kept, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.Len(t, kept, len(made), "a golden picture that nothing is compared with")
}

// makeAll makes a small job and whatever is compared, by name.
func makeAll(t *testing.T) map[string]image.Image {
	t.Helper()
	work := t.TempDir()
	in := func(name string) string { return filepath.Join(work, name) }
	job := in("job")
	programtest.Do(t, "make", artwork, "--out", job, "--distance", "8cm", "--frame-width", "7mm", "--pixels", "240x160",
		"--paper", "A6", "--guide-paper", "A5", "--lamp", "-30cm,-30cm,40cm")
	programtest.Do(t, "proof", job, "--sharp", "--out", in("sharp.png"))
	programtest.Do(t, "proof", job, "--aperture", "f/11", "--out", in("lens.png"))
	opened := func(file string) *pdftest.Doc {
		data, err := os.ReadFile(filepath.Join(job, file))
		require.NoError(t, err)
		return pdftest.Open(t, data)
	}
	guide, order := opened("guide.pdf"), 2 // the page that tells the order of pasting
	for !strings.Contains(guide.Text(order), "Begin with") {
		order++
	}
	seams := readPNG(t, filepath.Join(job, "seams.png"))
	return map[string]image.Image{
		"sheet":       opened("sheets.pdf").Render(2, 48),
		"guide-cover": guide.Render(1, 60),
		"guide-order": guide.Render(order, 60),
		"seam-map":    imaging.Resize(seams, seams.Bounds().Dx()/6, 0, imaging.Box),
		"proof-sharp": readPNG(t, in("sharp.png")),
		"proof-lens":  readPNG(t, in("lens.png")),
	}
}

func readPNG(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	picture, err := png.Decode(f)
	require.NoError(t, err)
	return picture
}

func writePNG(t *testing.T, path string, picture image.Image) {
	t.Helper()
	f, err := os.Create(path)
	require.NoError(t, err)
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	require.NoError(t, encoder.Encode(f, picture))
	require.NoError(t, f.Close())
}
