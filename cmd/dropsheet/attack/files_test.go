//go:build unix

package attack

import (
	"bytes"
	"flag"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/bmp"
	"golang.org/x/image/tiff"

	"dropsheet/tile/colour/icctest"
	"dropsheet/tile/job/jobtest"
)

var files = flag.Int("files", 12, "how many spoilt files of each kind of place are read")

// artworks are small files of the formats that artwork comes in, by their names.
func artworks(t *testing.T) map[string][]byte {
	t.Helper()
	picture := jobtest.DrawPattern(60, 40)
	out := map[string][]byte{}
	for name, encode := range map[string]func(b *bytes.Buffer) error{
		"a.png": func(b *bytes.Buffer) error { return png.Encode(b, picture) },
		"b.png": func(b *bytes.Buffer) error { return png.Encode(b, image.NewGray16(picture.Rect)) },
		"c.jpg": func(b *bytes.Buffer) error { return jpeg.Encode(b, picture, nil) },
		"d.gif": func(b *bytes.Buffer) error { return gif.Encode(b, picture, nil) },
		"e.bmp": func(b *bytes.Buffer) error { return bmp.Encode(b, picture) },
		"f.tif": func(b *bytes.Buffer) error {
			return tiff.Encode(b, picture, &tiff.Options{Compression: tiff.Deflate, Predictor: true})
		},
	} {
		var b bytes.Buffer
		require.NoError(t, encode(&b))
		out[name] = b.Bytes()
	}
	out["g.png"] = icctest.InPNG(t, out["a.png"], icctest.Scanner())
	goroot, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	pictures := filepath.Join(strings.TrimSpace(string(goroot)), "src", "image", "testdata")
	for name, path := range map[string]string{
		"h.tif":  jobtest.WriteInks(t, icctest.PressInks(), 30, 20, [4]uint8{200, 90, 30, 10}),
		"i.webp": "../../../tile/artwork/testdata/patches-lossy-alpha.webp",
		"j.webp": "../../../tile/artwork/testdata/patches-lossless.webp",
		"k.pdf":  "../../../examples/chart/chart.pdf",
		"l.jpg":  filepath.Join(pictures, "video-001.q50.420.progressive.jpeg"),
		"m.jpg":  filepath.Join(pictures, "video-001.cmyk.jpeg"),
	} {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		out[name] = data
	}
	return out
}

// spoilt is a file with a few things wrong in it: bits, its end, numbers that a careless reader trips over, parts of
// it twice, not at all or of another file. Half of it happens near the start, where headers are.
func spoilt(r *rand.Rand, data, other []byte) []byte {
	data = slices.Clone(data)
	for range 1 + r.IntN(3) {
		if len(data) < 16 {
			break
		}
		at := r.IntN(len(data) - 8)
		if r.IntN(2) == 0 {
			at = r.IntN(min(len(data)-8, 200))
		}
		to := at + r.IntN(min(len(data)-at, 200))
		switch r.IntN(6) {
		case 0:
			data[at] ^= 1 << r.IntN(8)
		case 1:
			data = data[:at]
		case 2:
			n := one("\x00\x00\x00\x00", "\xff\xff\xff\xff", "\x7f\xff\xff\xff", "\x80\x00\x00\x00", "\x00\x00\x00\x01",
				"\xff\xff", "\x00\x00", "\x00\x01")(r)
			copy(data[at:], n)
		case 3:
			data = slices.Delete(data, at, to)
		case 4:
			data = slices.Insert(data, at, slices.Clone(data[at:to])...)
		case 5:
			from := r.IntN(len(other))
			data = slices.Replace(data, at, to, other[from:min(len(other), from+200)]...)
		}
	}
	return data
}

// TestSpoiltArtworks: whatever a file holds that calls itself a picture, the program tells its size, or makes a job of
// it, or says why not.
func TestSpoiltArtworks(t *testing.T) {
	random := rand.New(rand.NewPCG(*seed, 1))
	m := newRoom(t)
	all := artworks(t)
	names := slices.Sorted(maps.Keys(all))
	codes := map[int]int{}
	for i := range *files {
		name := names[i%len(names)]
		data := spoilt(random, all[name], all[names[random.IntN(len(names))]])
		require.NoError(t, os.WriteFile(filepath.Join(m.folder, name), data, 0o600))
		args := []string{"size", name, "--json"}
		if i%12 == 11 { // which reads the pixels too, in the time of many sizes
			require.NoError(t, os.RemoveAll(filepath.Join(m.folder, "job")))
			args = []string{"make", name, "--out=job", "--max-sheets=1", "--pixels=24x16", "--paper=A6"}
		}
		got := m.run(t, args...)
		codes[got.code]++
		if wrong := got.wrong(); wrong != "" {
			kept := filepath.Join(t.ArtifactDir(), name)
			require.NoError(t, os.WriteFile(kept, data, 0o600))
			t.Errorf("%s\n  %s, of seed %d the file %d\n  dropsheet %q\n  %s", wrong, kept, *seed, i, args,
				lastLines(got.stderr))
		}
		m.requireNothingHidden(t)
	}
	t.Logf("seed %d, %d files: exit codes %v", *seed, *files, codes)
}

// TestSpoiltRecords: the files that the program keeps for itself may come back spoilt: a job, the printers, a film's
// words.
func TestSpoiltRecords(t *testing.T) {
	s := jobtest.NewSpoiler(*seed)
	m := newRoom(t)
	film := []string{"proof", "job", "--pixels=24x16", "--samples=1", "--frame-width=9mm", "--fall=20cm",
		"--frame-rate=600", "--film=film"}
	for _, args := range [][]string{{"make", "artwork.png", "--out=job", "--max-sheets=1", "--pixels=24x16", "--paper=A6",
		"--printer=study"}, film} {
		got := m.run(t, args...)
		require.Zero(t, got.code, got.stderr)
	}
	printer := filepath.Join("config", "dropsheet", "printers.json")
	readers := map[string][][]string{
		"job/job.json": {{"job", "job"}, {"size", "job", "--json"}, {"check", "job"}, {"seams", "job", "--json"},
			{"reprint", "job", "all", "--force"}},
		printer: {{"size", "--printer=study"}, {"gauge", "--list"},
			{"gauge", "--save=office", "--read=200x250mm", "--margins=4,4,4,4mm"}},
		"film/film.json": {film},
	}
	codes := map[int]int{}
	for _, name := range slices.Sorted(maps.Keys(readers)) {
		path := filepath.Join(m.folder, name)
		whole, err := os.ReadFile(path)
		require.NoError(t, err)
		for i := range *files / 3 {
			data := s.Spoil(t, whole)
			require.NoError(t, os.WriteFile(path, data, 0o600))
			args := readers[name][i%len(readers[name])]
			got := m.run(t, args...)
			codes[got.code]++
			if wrong := got.wrong(); wrong != "" {
				kept := filepath.Join(t.ArtifactDir(), filepath.Base(name))
				require.NoError(t, os.WriteFile(kept, data, 0o600))
				t.Errorf("%s\n  %s, of seed %d the file %d\n  dropsheet %q\n  %s", wrong, kept, *seed, i, args,
					lastLines(got.stderr))
			}
		}
		require.NoError(t, os.WriteFile(path, whole, 0o600))
	}
	t.Logf("seed %d, %d files of each kind: exit codes %v", *seed, *files/3, codes)
}
