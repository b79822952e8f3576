package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
	"dropsheet/tile/pdf/pdftest"

	"github.com/stretchr/testify/require"
)

// keepPrinters gives the test a config folder of its own, with two printers in it: one measured on A4, one on A3.
func keepPrinters(t *testing.T) {
	t.Helper()
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	for _, args := range [][]string{
		{"--save", "study inkjet", "--read", "199.2x248.5mm", "--margins", "4,4,4,12mm"},
		{"--save", "hall laser", "--paper", "A3", "--between", "200x250mm", "--read", "201x249mm", "--margins", "5,6,7,8mm"},
	} {
		_, stderr, code := dropsheet(t, append([]string{"gauge"}, args...)...)
		require.Equal(t, exitDone, code, stderr)
	}
}

// drawnPictures are the picture streams of a file that dropsheet wrote, as they stand in it.
func drawnPictures(t *testing.T, data []byte) (pictures [][]byte) {
	t.Helper()
	for _, m := range regexp.MustCompile(`/Filter /DCTDecode[^>]*/Length [0-9]+>>\nstream\n`).FindAllIndex(data, -1) {
		rest := data[m[1]:]
		end := bytes.Index(rest, []byte("\nendstream\nendobj\n"))
		require.Positive(t, end)
		pictures = append(pictures, rest[:end])
	}
	require.NotEmpty(t, pictures)
	return pictures
}

func reprinted(t *testing.T, folder string, args ...string) (data []byte, stdout, stderr string) {
	t.Helper()
	out := filepath.Join(t.TempDir(), "again.pdf")
	stdout, stderr, code := dropsheet(t, append([]string{"reprint", folder, "--out", out}, args...)...)
	require.Equal(t, exitDone, code, stderr)
	data, err := os.ReadFile(out)
	require.NoError(t, err)
	return data, stdout, stderr
}

func TestMakeForAPrinter(t *testing.T) {
	keepPrinters(t)
	art, _ := jobtest.WritePattern(t, 300, 200)
	folder := filepath.Join(t.TempDir(), "job")
	stdout, stderr, code := dropsheet(t, "make", art, "--pixels", "120x80", "--out", folder, "--printer", "study inkjet",
		"--verbose")
	require.Equal(t, exitDone, code, stderr)
	require.NotContains(t, stderr, "measured on")
	require.Contains(t, stdout, `"study inkjet" on A4: across 0.4 % short, feed 0.6 % short; `+
		`margins left 4, top 4, right 4, bottom 12 mm; the sheets make up for it`)

	// The job carries the reading, so that it needs no config folder any more.
	text, err := os.ReadFile(filepath.Join(folder, place.JobFile))
	require.NoError(t, err)
	var j struct {
		Backdrop struct {
			Printer map[string]any `json:"printer"`
		} `json:"backdrop"`
	}
	require.NoError(t, json.Unmarshal(text, &j))
	require.Equal(t, "study inkjet", j.Backdrop.Printer["name"])
	require.InDelta(t, 0.996, j.Backdrop.Printer["across_scale"], 1e-12)
	require.InDelta(t, 0.994, j.Backdrop.Printer["feed_scale"], 1e-12)
	require.Equal(t, map[string]any{"left": 4.0, "top": 4.0, "right": 4.0, "bottom": 12.0},
		j.Backdrop.Printer["margins_mm"])
	sheets, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
	require.NoError(t, err)

	same, _, _ := reprinted(t, folder, "all", "--printer", "study inkjet")
	require.True(t, bytes.Equal(sheets, same), "on the same printer, the file again")
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	same, _, _ = reprinted(t, folder, "all")
	require.True(t, bytes.Equal(sheets, same), "as it was, the printer forgotten")

	// On a printer that was not measured, which needs no config folder either.
	decoded, err := job.Read(folder)
	require.NoError(t, err)
	data, _, stderr := reprinted(t, folder, "R1C1", "--printer", "none")
	require.Contains(t, stderr, "nothing is known of this printer's scale")
	boxes := pdftest.Open(t, data).PageBoxes(1)
	require.InDelta(t, decoded.Backdrop.Kept(decoded.Sheets[0]).WidthMM*72/25.4, boxes.Trim.RightPt-boxes.Trim.LeftPt,
		0.03)

}

func TestPrinterWords(t *testing.T) {
	keepPrinters(t)
	for _, c := range []struct {
		name string
		args []string
		code int
		says string
	}{
		{"a margin too", []string{"size", "--printer", "study inkjet", "--margin", "5mm"}, exitWrongWords,
			"give one of them"},
		{"not known", []string{"size", "--printer", "attic"}, exitWrongWords, `take "hall laser", "study inkjet"`},
		{"other paper", []string{"size", "--printer", "hall laser"}, exitDone,
			`printer "hall laser" was measured on A3, and the sheets are A4`},
		{"paper that it leaves nothing of", []string{"size", "--printer", "hall laser", "--paper", "50x50mm"},
			exitWrongWords, `the margins of printer "hall laser"`},
		{"a name that is taken", []string{"gauge", "--save", "none", "--read", "200x250mm", "--margins", "4,4,4,4mm"},
			exitWrongWords, "can't be named"},
	} {
		_, stderr, code := dropsheet(t, c.args...)
		require.Equal(t, c.code, code, "%s: %s", c.name, stderr)
		require.Contains(t, stderr, c.says, c.name)
	}
}

// On another printer or other paper a sheet has the same pixels and the same size; it only lies elsewhere on
// its page, and the page is drawn for that printer.
func TestReprintElsewhere(t *testing.T) {
	keepPrinters(t)
	art, _ := jobtest.WritePattern(t, 300, 200)
	folder := mustMake(t, art, "--max-sheets", "4", "--margin", "15mm")
	sheets, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
	require.NoError(t, err)
	j, err := job.Read(folder)
	require.NoError(t, err)
	want := drawnPictures(t, sheets)
	require.Len(t, want, len(j.Sheets))
	s := j.Sheets[0]
	keptPt := func(mm, drawn float64) float64 { return mm * drawn * 72 / 25.4 }
	original := pdftest.Open(t, sheets).PageBoxes(1)

	for _, c := range []struct {
		name         string
		args         []string
		across, feed float64 // how the page is drawn
		paperMM      [2]float64
		says, warns  string
	}{
		{name: "another printer", args: []string{"--printer", "study inkjet"}, across: 1 / 0.996, feed: 1 / 0.994,
			paperMM: [2]float64{210, 297}, says: `"study inkjet" on A4`},
		{name: "other paper", args: []string{"--paper", "A3"}, across: 1, feed: 1, paperMM: [2]float64{297, 420},
			says: "on A3"},
		{name: "both", args: []string{"--printer", "hall laser", "--paper", "A3"}, across: 200.0 / 201, feed: 250.0 / 249,
			paperMM: [2]float64{297, 420}, says: `"hall laser" on A3`},
		{name: "a printer measured on other paper", args: []string{"--printer", "hall laser"}, across: 200.0 / 201,
			feed: 250.0 / 249, paperMM: [2]float64{210, 297}, warns: "was measured on A3"},
	} {
		t.Run(c.name, func(t *testing.T) {
			data, stdout, stderr := reprinted(t, folder, append([]string{"all"}, c.args...)...)
			require.Contains(t, stdout, c.says)
			require.Contains(t, stderr, c.warns)
			require.Equal(t, want, drawnPictures(t, data), "the pixels are the same")
			boxes := pdftest.Open(t, data).PageBoxes(1)
			require.NotEqual(t, original, boxes)
			sx, sy, paper := c.across, c.feed, c.paperMM
			if boxes.Media.RightPt > boxes.Media.TopPt {
				sx, sy, paper = sy, sx, [2]float64{paper[1], paper[0]}
			}
			require.InDelta(t, keptPt(paper[0], 1), boxes.Media.RightPt, 0.02)
			require.InDelta(t, keptPt(paper[1], 1), boxes.Media.TopPt, 0.02)
			kept := j.Backdrop.Kept(s)
			require.InDelta(t, keptPt(kept.WidthMM, sx), boxes.Trim.RightPt-boxes.Trim.LeftPt, 0.03,
				"0.01 mm, as the boxes are rounded")
			require.InDelta(t, keptPt(kept.HeightMM, sy), boxes.Trim.TopPt-boxes.Trim.BottomPt, 0.03)
		})
	}

	t.Run("with spares", func(t *testing.T) {
		none, _, _ := reprinted(t, folder, "all", "--spare", "0")
		require.True(t, bytes.Equal(sheets, none))
		data, stdout, _ := reprinted(t, folder, "R1", "--spare", "2")
		require.Contains(t, stdout, "3 times each")
		before, again := pdftest.Open(t, sheets), pdftest.Open(t, data)
		chosen, err := j.Select([]string{"R1"})
		require.NoError(t, err)
		require.Greater(t, len(chosen), 1)
		require.Equal(t, 3*len(chosen), again.PageCount())
		for i := range again.PageCount() {
			require.Equal(t, before.Render(chosen[i/3].Page, 36).Pix, again.Render(i+1, 36).Pix, "page %d", i+1)
		}
		for _, n := range []string{"-1", "100", "1.5", "many"} {
			_, stderr, code := dropsheet(t, "reprint", folder, "R1", "--spare="+n)
			require.Equal(t, exitWrongWords, code)
			require.Contains(t, stderr, "from 0 to 99")
		}
	})
	t.Run("paper that is too small", func(t *testing.T) {
		out := filepath.Join(t.TempDir(), "again.pdf")
		_, stderr, code := dropsheet(t, "reprint", folder, "R1C1", "--paper", "A5", "--out", out)
		require.Equal(t, exitWrongWords, code)
		require.Regexp(t, `sheet R1C1 needs [0-9.]+x[0-9.]+mm even with strips of 4.5mm and laps of 3mm, and "A5", \w+, `+
			`holds [0-9.]+x[0-9.]+mm within margins of 15mm`+"\nhint: take paper or a printer that holds it", stderr)
		require.NoFileExists(t, out)
	})
}
