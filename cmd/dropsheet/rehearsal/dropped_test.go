package rehearsal

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"
	"github.com/stretchr/testify/require"
)

// A picture's file stays while a job is made of it, whatever is dropped meanwhile, and goes after that.
func TestFolderThatIsLent(t *testing.T) {
	folder := func() string {
		f, err := os.MkdirTemp(t.TempDir(), "")
		require.NoError(t, err)
		return f
	}
	first, second := folder(), folder()
	b := newBench(Subject{})
	_, back := b.lend() // of what was not dropped nothing goes
	b.put(Subject{Artwork: first}, nil, first)
	back()
	require.DirExists(t, first)

	s, back := b.lend()
	require.Equal(t, first, s.Artwork)
	_, backToo := b.lend()
	b.put(Subject{Artwork: second}, nil, second)
	back()
	require.DirExists(t, first, "another still has it")
	backToo()
	require.NoDirExists(t, first)
	require.DirExists(t, second)

	_, back = b.lend()
	b.clear()
	require.DirExists(t, second)
	back()
	require.NoDirExists(t, second)
}

// Another picture of the same proportions, and another part of the same picture, are another board.
func TestAnotherBoard(t *testing.T) {
	address, _ := served(t)
	board := func(words ...Word) string {
		t.Helper()
		all := asked(t, address, "look", question{Words: append(words, usual...), SidePx: 64, Draft: true})
		require.Equal(t, "plan", all[0].Kind, all[0].Text)
		return all[0].Board
	}
	whole := board()
	require.Equal(t, whole, board(Word{"lamp", "-60cm,0cm,80cm"}), "lamps are no part of what hangs there")
	left, right := board(Word{"crop", "0,0,0.5,1"}), board(Word{"crop", "0.5,0,0.5,1"})
	require.NotEqual(t, left, right)
	var other bytes.Buffer
	require.NoError(t, png.Encode(&other, image.NewGray(image.Rect(0, 0, 60, 40))))
	_, e := dropped(t, address, "other.png", other.Bytes())
	require.Empty(t, e.Text)
	require.NotEqual(t, whole, board())
}

// A page of a PDF is never called too coarse, for it has no pixels of its own; of several the page can't say which.
func TestDroppedPage(t *testing.T) {
	address, _ := served(t)
	warnings := func() (all []string) {
		// More pixels than a page is drawn with before its print is known.
		words := append([]Word{{"pixels", "30000x20000"}}, usual[0], usual[2])
		for _, r := range asked(t, address, "look", question{Words: words, SidePx: 64}) {
			all = append(all, r.Warnings...)
		}
		return all
	}
	coarse := "the picture has 60 x 40"
	require.Contains(t, strings.Join(warnings(), "\n"), coarse)
	chart, err := os.ReadFile(filepath.Join("..", "..", "..", "examples", "chart", "chart.pdf"))
	require.NoError(t, err)
	_, e := dropped(t, address, "chart.pdf", chart)
	require.Empty(t, e.Text)
	require.NotContains(t, strings.Join(warnings(), "\n"), "the picture has")

	two := gofpdf.New("P", "mm", "A4", "")
	two.AddPage()
	two.AddPage()
	var text bytes.Buffer
	require.NoError(t, two.Output(&text))
	_, e = dropped(t, address, "two.pdf", text.Bytes())
	require.Contains(t, e.Text, "has several pages")
	require.Contains(t, e.Hint, "save the one that you want")
	require.Equal(t, "chart.pdf", begun(t, address).Name, "the picture before stays")
}
