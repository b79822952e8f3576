package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

func printerNamed(name string) layout.Printer {
	return layout.Printer{
		Name: name, Paper: layout.Paper{Name: "A4", WidthMM: 210, HeightMM: 297}, AcrossScale: 199.3 / 200,
		FeedScale: 248.7 / 250,
		Margins:   layout.Margins{LeftMM: 3.5, TopMM: 4, RightMM: 3.5, BottomMM: 12.7},
	}
}

// What is kept comes back to the last bit, in order of the names whatever the order of keeping, and the file
// does not depend on that order.
func TestPrintersComeBack(t *testing.T) {
	var files [2][]byte
	for i, names := range [][]string{{"study", "attic", "Übungsraum"}, {"Übungsraum", "study", "attic"}} {
		path := filepath.Join(t.TempDir(), "new", "printers.json")
		for _, name := range names {
			require.NoError(t, storePrinter(path, printerNamed(name), false))
		}
		printers, err := readPrinters(path)
		require.NoError(t, err)
		require.Equal(t, []layout.Printer{printerNamed("attic"), printerNamed("study"), printerNamed("Übungsraum")},
			printers)
		files[i], err = os.ReadFile(path)
		require.NoError(t, err)
	}
	require.Equal(t, files[0], files[1])
}

func TestFindPrinter(t *testing.T) {
	path := filepath.Join(t.TempDir(), "printers.json")
	_, err := findPrinter(path, "study")
	require.ErrorContains(t, err, "none is kept yet")
	require.NoError(t, storePrinter(path, printerNamed("study inkjet"), false))
	_, err = findPrinter(path, "study")
	require.ErrorContains(t, err, `take "study inkjet"`)
	p, err := findPrinter(path, " study inkjet ")
	require.NoError(t, err)
	require.Equal(t, printerNamed("study inkjet"), p)
}

// A file that does not hold together is told of, by every command that needs it, and left as it is.
func TestDamagedPrintersAreLeftAlone(t *testing.T) {
	const whole = `{"dropsheet_printers": 1, "printers": [{"name": "hall", ` +
		`"paper": {"name": "A4", "width_mm": 210, "height_mm": 297}, "across_scale": 1, "feed_scale": 1, ` +
		`"margins_mm": {"left": 4, "top": 4, "right": 4, "bottom": 4}}]}`
	printers, err := decodePrinters([]byte(whole))
	require.NoError(t, err, "the cases below differ from what is read by one fault each")
	require.Len(t, printers, 1)
	for _, c := range []struct{ name, text, says string }{
		{"empty", "", "does not read as kept printers"},
		{"cut short", whole[:60], "does not read as kept printers"},
		{"something else", `{"dropsheet": 2}`, "is no file of kept printers"},
		{"of the future", `{"dropsheet_printers": 9}`, "of version 9 and this program reads version 1"},
		{"a slip in a word", `{"dropsheet_printers": 1, "printers": [{"nmae": "hall"}]}`, "nmae"},
		{"a scale that can't be", `{"dropsheet_printers": 1, "printers": [{"name": "hall", "paper": {"name": "A4", ` +
			`"width_mm": 210, "height_mm": 297}, "across_scale": 0.5, "feed_scale": 1}]}`,
			"a scale of 0.5 can't be"},
		{"no paper", `{"dropsheet_printers": 1, "printers": [{"name": "hall", "across_scale": 1, "feed_scale": 1}]}`,
			"a paper of 0x0mm can't be"},
		{"twice the same", whole[:len(whole)-2] + `, ` + whole[len(`{"dropsheet_printers": 1, "printers": [`):],
			"is in it twice"},
	} {
		t.Run(c.name, func(t *testing.T) {
			config, path := configFolder(t)
			require.NoError(t, os.Mkdir(filepath.Join(config, "dropsheet"), 0o755))
			require.NoError(t, os.WriteFile(path, []byte(c.text), 0o600))
			for _, args := range [][]string{saving("study", "--force"), {"gauge", "--list"}} {
				stdout, stderr, code := dropsheet(t, args...)
				require.Equal(t, exitFailed, code, args)
				require.Empty(t, stdout)
				require.Contains(t, stderr, c.says)
				require.Contains(t, stderr, path)
				left, err := os.ReadFile(path)
				require.NoError(t, err)
				require.Equal(t, c.text, string(left))
			}
		})
	}
}

// A write that fails midway, or can't be put in its place, leaves what was there and nothing else.
func TestReplaceFileIsAllOrNothing(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "printers.json")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))
	full := errors.New("the disk is full")
	err := replaceFile(path, func(w io.Writer) error {
		_, err := io.WriteString(w, "half of the n")
		return errors.Join(err, full)
	})
	require.ErrorIs(t, err, full)
	requireOnly(t, folder, "printers.json")
	left, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, "old", string(left))

	taken := filepath.Join(folder, "taken")
	require.NoError(t, os.MkdirAll(filepath.Join(taken, "within"), 0o755))
	err = replaceFile(taken, func(w io.Writer) error { return nil })
	require.Error(t, err, "a folder is in the way")
	require.NotContains(t, err.Error(), unfinishedSuffix, "the hidden name is nobody's business")
	requireOnly(t, folder, "printers.json", "taken")

	require.Error(t, replaceFile(filepath.Join(folder, "nowhere", "printers.json"), func(io.Writer) error { return nil }))
}

// Where the printers' file is a link, the file that it names is replaced, and the link stays.
func TestReplaceFileKeepsLinks(t *testing.T) {
	elsewhere, folder := t.TempDir(), t.TempDir()
	target, link := filepath.Join(elsewhere, "kept.json"), filepath.Join(folder, "printers.json")
	require.NoError(t, os.WriteFile(target, []byte("old"), 0o600))
	require.NoError(t, os.Symlink(target, link))
	require.NoError(t, replaceFile(link, func(w io.Writer) error {
		_, err := io.WriteString(w, "new")
		return err
	}))
	text, err := os.ReadFile(target)
	require.NoError(t, err)
	require.Equal(t, "new", string(text))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	require.NotZero(t, info.Mode()&os.ModeSymlink)
}

func requireOnly(t *testing.T, folder string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	var there []string
	for _, e := range entries {
		there = append(there, e.Name())
	}
	require.ElementsMatch(t, names, there)
}
