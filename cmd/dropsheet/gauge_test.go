package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/gauge"
	"dropsheet/tile/pdf/pdftest"
	"dropsheet/tile/printers"
)

// configFolder makes an empty user's config folder and returns the place of the printers' file in it (XDG
// Base Directory Specification 0.8).
func configFolder(t *testing.T) (folder, printers string) {
	t.Helper()
	folder = t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", folder)
	return folder, filepath.Join(folder, "dropsheet", "printers.json")
}

// printerKept is the printer of that name in the printers' file.
func printerKept(t *testing.T, path, name string) layout.Printer {
	t.Helper()
	kept, err := printers.Read(path)
	require.NoError(t, err)
	i := slices.IndexFunc(kept, func(p layout.Printer) bool { return p.Name == name })
	require.NotEqual(t, -1, i, name)
	return kept[i]
}

// saving is the words of a reading; the name may hold blanks.
func saving(name string, more ...string) []string {
	return append([]string{"gauge", "--save", name, "--read", "199.2x248.5mm", "--margins", "4,4,4,12mm"}, more...)
}

// The page goes to a file named for its paper, the output says what to do with it, and nothing is replaced
// without a word.
func TestGaugeWritesItsPage(t *testing.T) {
	config, _ := configFolder(t)
	t.Chdir(t.TempDir())
	stdout, stderr, code := dropsheet(t, "gauge", "--paper", "A5")
	require.Equal(t, exitDone, code, stderr)
	require.Empty(t, stderr)
	a5, err := layout.ParsePaper("A5")
	require.NoError(t, err)
	for _, want := range append(gauge.Steps(a5), "gauge-A5.pdf", gauge.SaveCommand(a5)) {
		require.Contains(t, stdout, want)
	}
	file, err := os.ReadFile("gauge-A5.pdf")
	require.NoError(t, err)
	require.Contains(t, pdftest.Open(t, file).Text(1), "Printer gauge")
	requireEmpty(t, config)

	_, stderr, code = dropsheet(t, "gauge", "--paper", "A5")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "--force")
	_, stderr, code = dropsheet(t, "gauge", "--paper", "A5", "--force")
	require.Equal(t, exitDone, code, stderr)
	_, stderr, code = dropsheet(t, "gauge", "--paper", "300x400mm", "--out", "wall.pdf")
	require.Equal(t, exitDone, code, stderr)
	require.FileExists(t, "wall.pdf")
}

// The command that the page shows, typed in, keeps the reading; two names stand side by side, and a name is
// not taken twice without --force.
func TestGaugeKeepsReadings(t *testing.T) {
	_, path := configFolder(t)
	t.Chdir(t.TempDir())
	a4, err := layout.ParsePaper("A4")
	require.NoError(t, err)
	shown := strings.Fields(strings.ReplaceAll(gauge.SaveCommand(a4), `"study inkjet"`, "NAME"))[1:]
	for i, word := range shown {
		shown[i] = strings.ReplaceAll(word, "NAME", "study inkjet")
	}
	stdout, stderr, code := dropsheet(t, shown...)
	require.Equal(t, exitDone, code, stderr)
	require.Empty(t, stderr)
	require.Contains(t, stdout, `"study inkjet" on A4: across 0.4 % short, feed 0.6 % short; `+
		`margins left 4, top 4, right 4, bottom 12 mm`)
	require.Contains(t, stdout, path)

	p := printerKept(t, path, "study inkjet")
	require.InDelta(t, 0.996, p.AcrossScale, 1e-12)
	require.InDelta(t, 0.994, p.FeedScale, 1e-12)
	require.Equal(t, layout.Margins{LeftMM: 4, TopMM: 4, RightMM: 4, BottomMM: 12}, p.Margins)

	// 179.1 mm between ticks 180 mm apart, and 251 of 250: half a per cent short, and four in a thousand long.
	_, stderr, code = dropsheet(t, "gauge", "--save", "hall laser", "--between", "180x250mm", "--read", "179.1x251mm",
		"--margins", "1cm,4,0,5mm")
	require.Equal(t, exitDone, code, stderr)
	hall := printerKept(t, path, "hall laser")
	require.InDelta(t, 0.995, hall.AcrossScale, 1e-12)
	require.InDelta(t, 1.004, hall.FeedScale, 1e-12)
	require.Equal(t, layout.Margins{LeftMM: 10, TopMM: 4, RightMM: 0, BottomMM: 5}, hall.Margins)

	before, err := os.ReadFile(path)
	require.NoError(t, err)
	_, stderr, code = dropsheet(t, saving("hall laser")...)
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "--force")
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, before, after)

	_, stderr, code = dropsheet(t, saving("hall laser", "--force")...)
	require.Equal(t, exitDone, code, stderr)
	hall = printerKept(t, path, "hall laser")
	require.InDelta(t, 0.996, hall.AcrossScale, 1e-12)

	stdout, _, code = dropsheet(t, "gauge", "--list")
	require.Equal(t, exitDone, code)
	require.Contains(t, stdout, path)
	require.Less(t, strings.Index(stdout, `"hall laser"`), strings.Index(stdout, `"study inkjet"`))
	entries, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	require.Len(t, entries, 1, "nothing unfinished is left")
}

// A reading that can be, but looks like a page made to fit, is kept with a warning; an odd margin likewise.
func TestGaugeDoubts(t *testing.T) {
	configFolder(t)
	for _, c := range []struct{ name, read, margins, says string }{
		{"both directions shrunk", "194x242.5mm", "4,4,4,12mm", "was fit to page left on?"},
		{"both directions grown", "206x257mm", "4,4,4,12mm", "was fit to page left on?"},
		{"a margin past the frame", "200x250mm", "4,4,4,30mm", "more than the page's frame shows, 15 mm"},
		{"only the feed off", "200x243mm", "4,4,4,12mm", ""},
		{"true", "200x250mm", "0,0,0,0mm", ""},
	} {
		_, stderr, code := dropsheet(t, "gauge", "--save", c.name, "--read", c.read, "--margins", c.margins)
		require.Equal(t, exitDone, code, stderr)
		if c.says == "" {
			require.Empty(t, stderr, c.name)
			continue
		}
		require.Contains(t, stderr, "warning: ", c.name)
		require.Contains(t, stderr, c.says, c.name)
	}
}

// What gauge refuses: exit 2, what to do, nothing kept and nothing written.
func TestGaugeWrongWords(t *testing.T) {
	for _, c := range []struct{ name, args, says string }{
		{"12 % short", "--save hall --read 176x248.5mm --margins 4,4,4,12mm",
			"off by 12 %, and no printer errs by more than 5 %\nhint: was the page made for other paper than A4 (--paper), or " +
				"printed with scale to fit left on"},
		{"across and feed swapped", "--save hall --read 248.5x199.2mm --margins 4,4,4,12mm", "Across comes first"},
		{"another paper than measured", "--save hall --paper A5 --read 199.2x248.5mm --margins 4,4,4,12mm",
			"other paper than A5"},
		{"letter's page", "--save hall --read 199.2x229.1mm --margins 4,4,4,12mm",
			"measure again\nhint: these are about the rules of letter: if its page was printed, give --paper letter"},
		{"A4's page", "--save hall --paper letter --read 199.2x248.5mm --margins 4,4,4,12mm", "give --paper A4"},
		{"no reading", "--save hall", "give --read and --margins"},
		{"no margins", "--save hall --read 199.2x248.5mm", "give --read and --margins"},
		{"a reading without a name", "--read 199.2x248.5mm --margins 4,4,4,12mm", "name the printer with --save"},
		{"an empty name", "--save= --read 199.2x248.5mm --margins 4,4,4,12mm", "needs a name"},
		{"reading without a unit", "--save hall --read 199.2x248.5 --margins 4,4,4,12mm", "has no unit"},
		{"margins without a unit", "--save hall --read 199.2x248.5mm --margins 4,4,4,12", "has no unit"},
		{"three margins", "--save hall --read 199.2x248.5mm --margins 4,4,12mm", "four margins"},
		{"an empty margin", "--save hall --read 199.2x248.5mm --margins 4,,4,12mm", "is not a length"},
		{"a margin below zero", "--save hall --read 199.2x248.5mm --margins 4,-4,4,12mm", "0mm or more"},
		{"margins that leave nothing", "--save hall --read 199.2x248.5mm --margins 11,1,11,1cm", "leave nothing of A4"},
		{"ticks that are not there", "--save hall --between 210x250mm --read 209x249mm --margins 4,4,4,12mm",
			"longer than the rules on A4, 200x250mm"},
		{"a page and a reading", "--save hall --out x.pdf --read 199.2x248.5mm --margins 4,4,4,12mm", "give one of them"},
		{"a list and a page", "--list --out x.pdf", "give --list alone"},
		{"artwork", "harbour.jpg", "takes no artwork"},
		{"unknown paper", "--paper foolscap", "A0 to A10"},
	} {
		t.Run(c.name, func(t *testing.T) {
			config, _ := configFolder(t)
			work := t.TempDir()
			t.Chdir(work)
			stdout, stderr, code := dropsheet(t, append([]string{"gauge"}, strings.Fields(c.args)...)...)
			require.Equal(t, exitWrongWords, code, stderr)
			require.Empty(t, stdout)
			require.Contains(t, stderr, c.says)
			requireEmpty(t, work)
			requireEmpty(t, config)
		})
	}
}

// The lengths that --help prints are the page's.
func TestGaugeHelpTellsTheRules(t *testing.T) {
	stdout, _, code := dropsheet(t, "gauge", "--help")
	require.Equal(t, exitDone, code)
	require.Regexp(t, `A4 +200x250mm`, stdout)
	require.Regexp(t, `letter +200x230mm`, stdout)
	require.Contains(t, stdout, `dropsheet gauge --save study --read 199.2x248.5mm --margins 4,4,4,12mm`)
}
