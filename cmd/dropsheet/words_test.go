package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
)

// What the command line must refuse: exit 2, one message that says what to do, nothing written.
func TestWrongWords(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	for _, c := range []struct{ name, args, says string }{
		{"no such command", "prnt", "take size, make"},
		{"no such flag", "size --dorp 5mm", "unknown flag: --dorp\nhint: did you mean --drop?"},
		{"no such flag, with its value", "size --distnce=40cm", "unknown flag: --distnce\nhint: did you mean --distance?"},
		{"the beginning of flags", "size --frame 4cm", "did you mean --frame-width or --frame-rate?"},
		{"a flag of another command", "make ART --shape 3:2", "unknown flag: --shape\nhint: --shape is a flag of size\n"},
		{"a flag of other commands", "check job --lamp 1m,1m,1m", "hint: --lamp is a flag of size, make, rehearse, " +
			"proof and seams\n"},
		{"a flag of no command", "size --zebra", "hint: dropsheet size --help lists the flags"},
		{"one dash", "size -distance 40cm", "unknown flag: -distance, and flags begin with two dashes\nhint: did you mean " +
			"--distance?"},
		{"one dash, with its value", "size -distance=40cm", "did you mean --distance?"},
		{"an en dash for two hyphens", "size \u2013drop 5mm", "no hyphen, as text that was copied often does\nhint: write " +
			"--drop\n"},
		{"an en dash and a hyphen", "size \u2013-drop=5mm", "hint: write --drop=5mm"},
		{"a comma for the point", "size --distance 0,4m", `"0,4m" has a comma for the point` + "\nhint: write 0.4m"},
		{"a drop wider than its distance from the camera", "size --drop 4m", "inside its focal length of 4.003m"},
		{"a ball so large that the usual distance is too short", "size --drop 150mm", "does not turn the picture over\n" +
			"hint: move the backdrop further off"},
		{"a drop of a few wavelengths", "size --drop 0.001mm", "hint: take 0.01mm to 1000m"},
		{"a frame of nothing", "size --frame-width 1e-5mm", "hint: take 0.01mm to 1000m"},
		{"a frame without end", "size --frame-rate 5e-324", "5e-324 frames a second can't be\nhint: take a rate from 0.001"},
		{"one letter", "size -x", "unknown flag: -x, and flags begin with two dashes\nhint: dropsheet size --help"},
		{"a flag without its value", "size --distance", "--distance needs a value\nhint: write --distance length\n"},
		{"a switch with a value", "size --json=yes", `--json: "yes" can't be taken` + "\nhint: give the flag alone"},
		{"a job for the screen", "make ART --out -", "--out -: a job goes to a folder, not to the screen\nhint: name one"},
		{"a folder without a name", "make ART --out=", `--out: "" is no name` + "\nhint: write one, or leave the flag out"},
		{"a name with spaces", "make my picture.jpg",
			`make takes one artwork, and got ["my" "picture.jpg"]` +
				"\nhint: name one, and put quotes round a name with spaces"},
		{"two artworks for size", "size my picture.jpg", "put quotes round a name with spaces"},
		{"no job", "check", "check takes one job, and got none\nhint: name the folder that make wrote"},
		{"a gauge page that is no PDF", "gauge --out x.png", "a gauge page is no .png\nhint: take a name that ends in .pdf"},
		{"an artwork for gauge", "gauge x.png", `gauge takes no artwork, and got ["x.png"]` + "\nhint: give flags only"},
		{"margins without a unit", "gauge --save x --read 199x248mm --margins 4,4,4,12",
			`"4,4,4,12" has no unit` + "\nhint: write it after the last, such as 4,4,4,12mm"},
		{"drop without a unit", "size --drop 5", "write 5mm"},
		{"drop of nothing", "size --drop 0mm", "above 0mm"},
		{"drop negative", "size --drop -5mm", "above 0mm"},
		{"drop NaN", "size --drop NaNmm", "is not a length"},
		{"drop twice", "size --drop 5mm --drops-per-ml 20", "give one of them"},
		{"a hanging drop too large", "size --body hanging --drops-per-ml 20 --held 2mm", "falls off before"},
		{"a hanging drop by a nozzle", "size --body hanging --nozzle 2mm", "--drops-per-ml"},
		{"no drops to the millilitre", "size --drops-per-ml 0", "above 0"},
		{"a drop of an ocean", "size --drops-per-ml 5e-324", "above 0.001"},
		{"unknown liquid", "size --liquid quicksilver", "water"},
		{"index 1", "size --liquid 1", "above 1"},
		{"index below 1", "size --liquid 0.9", "above 1"},
		{"index NaN", "size --liquid NaN", "take water"},
		{"unknown body", "size --body cube", "ball, hanging, upright-rod or level-rod"},
		{"fill 0", "size --fill 0", "above 0 and below 1"},
		{"fill 1", "size --fill 1", "above 0 and below 1"},
		{"fill NaN", "size --fill NaN", "above 0 and below 1"},
		{"distance without a unit", "size --distance 200", "write 200mm"},
		{"distance 0", "size --distance 0mm", "above 0mm"},
		{"inside the focal length", "size --distance 4mm", "does not turn the picture over"},
		{"camera in the drop", "size --camera-distance 2mm --frame-width 40mm", "move it further off"},
		{"lens that can't focus", "size --lens 400mm", "can't focus"},
		{"lens, frame and distance", "size --lens 50mm --frame-width 40mm --camera-distance 1m", "leave one of them out"},
		{"unknown paper", "size --paper foolscap", "A0 to A10"},
		{"margins that leave no cell", "size --margin 10cm", "make the margin or lap smaller"},
		{"lap that leaves no cell", "size --lap 19cm", "make the margin or lap smaller"},
		{"lap too small", "size --lap 1mm", "hint: take 3mm or more"},
		{"print size without a unit", "size --print-size 900", "write 900mm"},
		{"three that disagree", "size --distance 20cm --print-size 900x600mm --fill 0.5", "give any two"},
		{"too many sheets", "size --distance 9m", "more than 500"},
		{"more than allowed", "size --distance 40cm --fill 0.85 --max-sheets 3", "3 are allowed"},
		{"no sheets", "size --max-sheets 0", "1 or more"},
		{"pixels", "size --pixels 1920", "1920x1080"},
		{"sensor", "size --sensor 36x0mm", "above zero"},
		{"shape", "size --shape 3", "3:2"},
		{"sharp to nothing", "size --sharp-to 0", "above 0"},
		{"sharp to a word", "size --sharp-to fine", "write a plain number"},
		{"corner", "size --light-from behind", "top-left"},
		{"orientation", "size --orientation sideways", "portrait"},
		{"a surround that is none", "size --surround mauvish", "stretch, a colour such as #203040"},
		{"a surround's size without a surround", "size --surround-size 2mx1m", "ask for a surround too"},
		{"a surround smaller than the print", "size --surround navy --surround-size 20x10cm", "does not hold the print"},
		{"travel of nothing", "size --travel 0mm", "above 0mm"},
		{"travel out of the room", "size --travel 5m", "hint: take one up to 1m"},
		{"two artworks", "size a.jpg b.jpg", "one artwork"},
		{"no artwork", "make", "make takes one artwork, and got none\nhint: name a picture file"},
		{"more sheets for nothing", "make ART --more-sheets 3", "name it with --avoid"},
		{"a board that does not hold the print", "size --distance 40cm --fill 0.85 --board-width 60cm",
			"does not go on a board of 600mm"},
		{"columns that are too few", "size --distance 40cm --fill 0.85 --columns 2", "more than were asked for"},
		{"level without lamps", "make ART --level", "say so with --lamp"},
		{"level where no light falls", "make ART --level --distance 40cm --lamp 20cm,0cm,1cm", "without light"},
		{"a lamp behind the board", "size --lamp 0mm,0mm,-10cm", "above 0mm"},
		{"a lamp with two figures", "size --lamp 0mm,10cm", "three lengths"},
		{"ppi 0", "make ART --ppi 0", "above 0"},
		{"a print that stretches the picture", "make ART --print-size 500x500mm", "print it"},
		{"reprint of nothing", "reprint", "takes a job"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			t.Chdir(dir)
			args := strings.Fields(strings.ReplaceAll(c.args, "ART", art))
			stdout, stderr, code := dropsheet(t, args...)
			require.Equal(t, exitWrongWords, code, stderr)
			require.Empty(t, stdout)
			require.Contains(t, stderr, c.says)
			require.True(t, strings.HasPrefix(stderr, "dropsheet: "), stderr)
			requireEmpty(t, dir)
		})
	}
}

// What fails for the world's reasons: exit 1, a message, nothing written.
func TestFailedJobs(t *testing.T) {
	for _, c := range []struct {
		name    string
		content func() []byte
		args    string
		says    string
	}{
		{"artwork that is not there", nil, "make ART", "no such file"},
		{"artwork that is empty", func() []byte { return nil }, "make ART", "empty"},
		{"artwork that is text", func() []byte { return []byte("a harbour at dusk, in words") }, "make ART", "picture"},
		{"artwork cut short", func() []byte { return pngBytes(t)[:200] }, "make ART", "picture"},
		{"a header that claims a giant", giantHeader, "make ART", "pixels"},
		{"artwork that is a folder", nil, "make .", "folder"},
		{"size of what is not there", nil, "size ART", "no such file"},
		{"a pipe in place of what is read again and again", nil, "rehearse -",
			"what is piped in is not read here\nhint: save it as a file first"},
		{"a job that is not there", nil, "reprint nowhere all",
			`job "nowhere" can't be read: no such file or directory` + "\nhint: name a job.json or the folder that holds it"},
		{"a job that is a picture", func() []byte { return pngBytes(t) }, "reprint ART all", "no job file"},
		{"a job of the future", func() []byte { return []byte(`{"dropsheet": 99}`) }, "reprint ART all", "version 99"},
		{"a job of the format before", func() []byte { return []byte(`{"dropsheet": 2}`) }, "reprint ART all",
			"version 2 and this program reads versions 3 and 4"},
		{"a job without sheets", func() []byte { return []byte(`{"dropsheet": 4}`) }, "reprint ART all",
			"does not hold together"},
	} {
		t.Run(c.name, func(t *testing.T) {
			work, elsewhere := t.TempDir(), t.TempDir()
			t.Chdir(work)
			art := filepath.Join(elsewhere, "artwork")
			if c.content != nil {
				require.NoError(t, os.WriteFile(art, c.content(), 0o600))
			}
			stdout, stderr, code := dropsheet(t, strings.Fields(strings.ReplaceAll(c.args, "ART", art))...)
			require.Equal(t, exitFailed, code, stderr)
			require.Empty(t, stdout)
			require.Contains(t, stderr, c.says)
			requireEmpty(t, work)
		})
	}
}

func pngBytes(t *testing.T) []byte {
	t.Helper()
	path, _ := jobtest.WritePattern(t, 60, 40)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return data
}

// giantHeader is a BMP header of 2 million by 2 million pixels with nothing behind it.
func giantHeader() []byte {
	h := make([]byte, 54)
	copy(h, "BM")
	h[10], h[14] = 54, 40
	copy(h[18:], []byte{0x80, 0x84, 0x1e, 0})
	copy(h[22:], []byte{0x80, 0x84, 0x1e, 0})
	h[26], h[28] = 1, 24
	return h
}

func requireEmpty(t *testing.T, dir string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Empty(t, entries, "nothing may be left behind")
}
