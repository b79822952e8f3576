package artwork

import (
	"crypto/sha256"
	"image"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// requireClear checks the form that every error has: the path as given, what is wrong, what to do; lower
// case, no full stop.
func requireClear(t *testing.T, err error, path, want string) {
	t.Helper()
	require.Error(t, err)
	text := err.Error()
	require.True(t, strings.HasPrefix(text, `picture "`+path+`": `), text)
	require.Contains(t, text, want)
	require.Contains(t, text, "\nhint: ", "what to do: %s", text)
	require.False(t, strings.HasSuffix(text, "."), text)
	rest := strings.TrimPrefix(text, `picture "`+path+`": `)
	require.Equal(t, strings.ToLower(rest[:1]), rest[:1], text)
}

func TestOpenFaults(t *testing.T) {
	t.Chdir(t.TempDir())
	write := func(name, data string) { require.NoError(t, os.WriteFile(name, []byte(data), 0o600)) }
	write("empty.jpg", "")
	write("one-byte.jpg", "\xff")
	write("letter.jpg", "Dear photographer,")
	write("BM.txt", "BMW is a maker of cars")
	write("head.png", "\x89PNG\r\n\x1a\n")
	write("head.jpg", "\xff\xd8\xff")
	write("head.gif", "GIF89a")
	write("head.tif", "II\x2a\x00")
	write("head.webp", "RIFF\x04\x00\x00\x00WEBP")
	write("fine.png", string(encodePNG(t, patchPicture())))
	require.NoError(t, os.Mkdir("folder.jpg", 0o700))
	require.NoError(t, os.Symlink("loop.jpg", "loop.jpg"))
	require.NoError(t, os.Symlink("gone.jpg", "dangling.jpg"))
	cases := []struct{ path, want string }{
		{"missing.jpg", "no such file"},
		{"../nowhere/missing.jpg", "no such file"},
		{"dangling.jpg", "no such file"},
		{"folder.jpg", "this is a folder"},
		{"fine.png/inside.jpg", "not a directory"},
		{"loop.jpg", "too many levels of symbolic links"}, // can't be read, whoever asks
		{os.DevNull, "this is a device or a pipe"},
		{"empty.jpg", "the file is empty"},
		{"one-byte.jpg", "not a picture of a known format"},
		{"letter.jpg", "not a picture of a known format"},
		{"BM.txt", "not a picture of a known format"},
		{"head.png", "cut short"},
		{"head.jpg", "cut short"},
		{"head.gif", "can't be decoded (gif: reading header"},
		{"head.tif", "cut short"},
		{"head.webp", "can't be decoded (webp: invalid format)"},
	}
	for _, c := range cases {
		t.Run(c.path, func(t *testing.T) {
			p, err := Open(c.path, Default)
			requireClear(t, err, c.path, c.want)
			require.Nil(t, p)
			if strings.HasPrefix(c.want, "no such") {
				require.ErrorIs(t, err, fs.ErrNotExist)
			}
			_, _, err = ReadSize(c.path, Default)
			requireClear(t, err, c.path, c.want)
		})
	}
}

// TestReadAll: a file that changes its length while it is read is not taken.
func TestReadAll(t *testing.T) {
	data, err := readAll(strings.NewReader("12345"), 5, upTo(1))
	require.NoError(t, err)
	require.Equal(t, "12345", string(data))
	for name, c := range map[string]struct {
		size int64
		want string
	}{
		"shrank":   {6, "grew shorter"},
		"vanished": {1000, "grew shorter"},
		"grew":     {4, "grew longer"},
		"giant":    {1 << 40, "1099511627776 bytes"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := readAll(strings.NewReader("12345"), c.size, upTo(1))
			require.ErrorContains(t, err, c.want)
		})
	}
}

// TestOpen: every kind of file gives its size, its hash, one of three forms; the header alone gives the same size.
func TestOpen(t *testing.T) {
	for name, data := range seeds(t) {
		t.Run(name, func(t *testing.T) {
			path := saved(t, data)
			p, err := Open(path, Default)
			require.NoError(t, err)
			requireSound(t, p, DefaultMaxPixels)
			require.Equal(t, sha256.Sum256(data), p.SHA256)
			require.Equal(t, strings.Fields(name)[0], p.Format)
			w, h := p.Size()
			rw, rh, err := ReadSize(path, Default)
			require.NoError(t, err)
			require.Equal(t, image.Pt(w, h), image.Pt(rw, rh))

			_, err = Open(path, upTo(w*h-1))
			requireClear(t, err, path, "are more than the")
			_, _, err = ReadSize(path, upTo(w*h-1))
			requireClear(t, err, path, "are more than the")
			_, err = Open(path, upTo(w*h))
			require.NoError(t, err)
		})
	}
}

// TestOpenKeepsNothing: the picture holds no part of the file's bytes, which would keep them all in memory.
func TestOpenKeepsNothing(t *testing.T) {
	for name, data := range seeds(t) {
		t.Run(name, func(t *testing.T) {
			p, err := decode(data, Reading{Limits: Default})
			require.NoError(t, err)
			before := samples(p)
			profile := string(p.ICC)
			clear(data)
			require.Equal(t, before, samples(p))
			require.Equal(t, profile, string(p.ICC))
		})
	}
}

// TestExtensionIsNoMatter: what a file is, is told by its bytes.
func TestExtensionIsNoMatter(t *testing.T) {
	path := filepath.Join(t.TempDir(), "really-a-png.JPG")
	require.NoError(t, os.WriteFile(path, encodePNG(t, patchPicture()), 0o600))
	p, err := Open(path, Default)
	require.NoError(t, err)
	require.Equal(t, "png", p.Format)
}
