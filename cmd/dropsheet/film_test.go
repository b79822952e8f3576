package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
)

// passing are words for a drop that passes a frame 6 mm high within six frames: 11 mm at 2 m/s take 5.5 ms.
var passing = []string{"--speed", "2m/s", "--frame-rate", "1000", "--shutter", "50us", "--pixels", "30x20"}

// readFrame decodes a picture of a film, or a proof.
func readFrame(t *testing.T, path string) *image.RGBA {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	frame, err := png.Decode(f)
	require.NoError(t, err, path)
	rgba := image.NewRGBA(frame.Bounds())
	for i := range rgba.Pix {
		x, y := i/4%rgba.Rect.Dx(), i/4/rgba.Rect.Dx()
		r, g, b, _ := frame.At(x, y).RGBA()
		rgba.Pix[i] = []uint8{uint8(r >> 8), uint8(g >> 8), uint8(b >> 8), 255}[i%4]
	}
	return rgba
}

// A film of the passage: the drop comes in above and leaves below, in the middle as proof shows it. Other words do not
// come into its folder unless they are told to, and never into one that is not a film's.
func TestFilm(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 120, 80)
	folder := mustMake(t, art, "--frame-width", "9mm")
	film := filepath.Join(t.TempDir(), "film")
	words := append([]string{"proof", folder}, passing...)
	stdout, stderr, code := dropsheet(t, append(words, "--film", film)...)
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stderr, "note: 5 frames of 30 x 20 pixels, for as long as any of the drop is in the frame: 0.2 s")
	require.Contains(t, stdout, "31 times a second; taken to be round in the frame's middle")
	require.Contains(t, stdout, "film.webm of 5 frames")

	files := readFolder(t, film)
	require.Len(t, files, 5+2)
	const cluster = "\x1f\x43\xb6\x75" // begins a frame (RFC 9559)
	require.True(t, bytes.HasPrefix(files["film.webm"], []byte("\x1a\x45\xdf\xa3")), "EBML (RFC 8794)")
	require.Equal(t, 5, bytes.Count(files["film.webm"], []byte(cluster)))

	still := filepath.Join(t.TempDir(), "still.png")
	_, stderr, code = dropsheet(t, append(words, "--out", still)...)
	require.Equal(t, exitDone, code, stderr)
	require.Equal(t, readFrame(t, still).Pix, readFrame(t, filepath.Join(film, "frame-0003.png")).Pix)
	board := filepath.Join(t.TempDir(), "board.png")
	_, stderr, code = dropsheet(t, append(words, "--out", board, "--drop-at", "5cm,0mm")...)
	require.Equal(t, exitDone, code, stderr)
	beside, before := readFrame(t, board), -1.0
	for frame := range 5 {
		name := fmt.Sprintf("frame-%04d.png", frame+1)
		var sum, rows float64
		for i, v := range readFrame(t, filepath.Join(film, name)).Pix {
			d := float64(v) - float64(beside.Pix[i])
			sum, rows = sum+d*d, rows+d*d*float64(i/4/30)
		}
		require.Greater(t, rows/sum, before+1, "%s: it falls", name)
		before = rows / sum
	}

	require.NoError(t, os.WriteFile(filepath.Join(film, "notes.txt"), []byte("mine"), 0o666))
	other := append(words, "--aperture", "f/8", "--film", film)
	_, stderr, code = dropsheet(t, other...)
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "made by other words\nhint: name another with --film, or give --force")
	_, stderr, code = dropsheet(t, append(other, "--force", "--frame-rate", "500")...)
	require.Equal(t, exitDone, code, stderr)
	again := readFolder(t, film)
	require.Len(t, again, 3+3, "the old frames are gone, and what was not dropsheet's is there")
	require.Equal(t, "mine", string(again["notes.txt"]))

	for _, c := range []struct {
		name string
		args []string
		code int
		says string
	}{
		{"a folder with other things in it", append(words, "--film", folder), exitFailed, "holds no film of dropsheet's"},
		{"a folder in none", append(words, "--film", filepath.Join(film, "no", "where")), exitFailed,
			"can't be made: no such file or directory\nhint: name another with --film"},
		{"a file too", append(words, "--film", film, "--out", still), exitWrongWords, "give one of them"},
		{"no speed", []string{"proof", folder, "--frame-rate", "1000", "--film", film}, exitWrongWords, "--fall"},
		{"no rate", []string{"proof", folder, "--fall", "20cm", "--film", film}, exitWrongWords, "say --frame-rate"},
		{"too many frames", []string{"proof", folder, "--fall", "20cm", "--frame-rate", "1000000", "--film", film},
			exitWrongWords, "a film has at most 2000\nhint: give a frame rate of at most 350000 a second"},
		{"played too fast", append(words, "--playback", "1000", "--film", film), exitWrongWords, "take 0.1 to 500"},
		{"between two frames", append(words, "--frame-rate", "10", "--drop-at", "0mm,5cm", "--film", film), exitWrongWords,
			"between two of them"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, stderr, code := dropsheet(t, c.args...)
			require.Equal(t, c.code, code, stderr)
			require.Contains(t, stderr, c.says)
		})
	}
}

// stopAt ends a run as Ctrl-C does when what it writes comes to some words.
type stopAt struct {
	bytes.Buffer
	words string
	stop  func()
}

func (s *stopAt) Write(p []byte) (int, error) {
	if strings.Contains(string(p), s.words) {
		s.stop()
	}
	return s.Buffer.Write(p)
}

// A film that was stopped has whole frames and nothing else, and the same words make of it what they make at once.
func TestFilmStoppedGoesOn(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 120, 80)
	folder := mustMake(t, art, "--frame-width", "9mm")
	parent := t.TempDir()
	words := func(film string) []string {
		return append(append([]string{"proof", folder, "--film", filepath.Join(parent, film)}, passing...), "--oblate", "0.9")
	}
	_, stderr, code := dropsheet(t, words("at-once")...)
	require.Equal(t, exitDone, code, stderr)

	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	errs := &stopAt{words: "frame 2 of", stop: stop}
	code = run(ctx, console{out: &bytes.Buffer{}, err: errs, terminal: true}, words("stopped"))
	require.Equal(t, exitFailed, code)
	require.Contains(t, errs.String(), `dropsheet: stopped; 3 of 5 frames are in "`)
	left := readFolder(t, filepath.Join(parent, "stopped"))
	require.Len(t, left, 4, "two frames, the one in the middle that comes first, and the words")
	for name := range left {
		if strings.HasSuffix(name, ".png") {
			readFrame(t, filepath.Join(parent, "stopped", name))
		}
	}
	first := filepath.Join(parent, "stopped", "frame-0001.png")
	before, err := os.Stat(first)
	require.NoError(t, err)

	// one of them spoilt
	require.NoError(t, os.Truncate(filepath.Join(parent, "stopped", "frame-0002.png"), 100))
	_, stderr, code = dropsheet(t, words("stopped")...)
	require.Equal(t, exitDone, code, stderr)
	after, err := os.Stat(first)
	require.NoError(t, err)
	require.True(t, os.SameFile(before, after) && before.ModTime().Equal(after.ModTime()), "it is not rendered again")
	require.Equal(t, readFolder(t, filepath.Join(parent, "at-once")), readFolder(t, filepath.Join(parent, "stopped")))
}
