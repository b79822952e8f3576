package told

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/layout/shot"
	"dropsheet/tile/artwork"
	"dropsheet/tile/guide"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/pdf/pdftest"
	"dropsheet/tile/seammap"
	"dropsheet/tile/texture"
)

func TestMain(m *testing.M) { programtest.Main(m) }

// setups are shots of every kind, by the words that they are asked for with.
var setups = []string{
	"--distance 40cm",
	"--distance 40cm --frame-width 9mm --sharp-to 0.5",
	"--distance 40cm --frame-width 40cm --travel 3mm",
	"--focus picture --aperture f/11",
	"--paper letter --distance 16in --frame-width 9mm",
	"--focus edge --frame-rate 12500 --aperture f/22",
	"--liquid sea-water --drop 3.4mm --frame-rate 60",
	"--liquid ethanol --oblate 0.9 --look straight",
	"--liquid glycerol --print-size 300x200mm --fill 0.7",
	"--liquid syrup-40 --distance 25cm --fit inside --background black --look straight",
	"--liquid crown-glass --drop 20mm --distance 30cm --camera-distance 80cm",
	"--liquid acrylic --drop 12mm --distance 30cm --look 0.5",
	"--liquid 1.38 --drop 2mm --distance 2.2m --max-sheets 4",
	"--body upright-rod --drop 20mm --liquid crown-glass --distance 40cm",
	"--body upright-rod --liquid water --look straight --camera eye --copies 2 --drop 10mm --wall 1mm --distance 8cm",
	"--body hanging --drop 3.4mm --held 2mm --distance 30cm --background black",
	"--body level-rod --liquid acrylic --drop 15mm --travel 2mm",
	"--body level-rod --liquid glycerol --look 0.3 --focus picture",
	"--look straight --round --turn 15 --distance 30cm",
	"--look straight --centre 0.3,0.5 --fit inside --distance 40cm --frame-width 40mm --surround black",
	"--fit inside --turn 20 --distance 70cm",
	"--lamp -60cm,-40cm,90cm --distance 30cm --light-from bottom-right",
	"--lamp -90cm,0cm,90cm --lamp 90cm,0cm,90cm --distance 40cm --drop 4.6mm",
	"--lamp -250cm,-160cm,90cm --distance 30cm",
	"--lamp -60cm,0cm,5cm --lamp-beam 10 --distance 40cm",
	"--lamp 0cm,-5cm,60cm --travel 1mm --surround stretch --frame-width 45cm",
	"--jet 2mm --speed -2m/s --frame-rate 12500 --pixel-size 28um --iso 1600 --playback 30",
	"--nozzle 3mm --fall 90cm --frame-rate 2000 --shutter 1/7000s --sensor 36x24mm --iso 400 --lamp -60cm,0cm,80cm " +
		"--lamp 60cm,0cm,80cm --lamp-lux 20000 --lamp-lux 25000 --lamp-beam 60 --lamp-size 8cm --lamp-aim drop " +
		"--lamp-aim -5cm,3cm",
}

// made are those of them, one of each kind, that a whole make is run for. The others' guides are written as make does,
// from the same plan.
var made = map[string]bool{
	"--distance 40cm --frame-width 40cm --travel 3mm":                                   true,
	"--liquid syrup-40 --distance 25cm --fit inside --background black --look straight": true,
	"--body upright-rod --drop 20mm --liquid crown-glass --distance 40cm":               true,
	"--lamp -60cm,-40cm,90cm --distance 30cm --light-from bottom-right":                 true,
}

// guideTells are the facts that the guide tells wherever there is something to tell.
var guideTells = []string{
	"drop.what", "drop.wall", "hangs.looks", "hangs.bent", "hangs.why",
	"place.distance", "place.camera", "place.fill", "place.reach", "place.near", "place.rim", "place.rim_shows",
	"place.rim_mirrors", "place.rim_dark", "highlights.mirrored", "highlights.inside",
	"highlights.none", "highlights.size",
	"place.drops", "place.boards",
	"look.bend", "look.holds", "look.turn", "look.off", "look.aside", "look.round", "look.along", "look.shows",
	"look.ribbon",
	"print.size", "print.sheets", "print.copies", "print.bare", "frame.size", "frame.drop",
	"coverage.surround", "coverage.sees", "coverage.none", "coverage.edges", "coverage.needs", "coverage.print",
	"coverage.unprinted",
	"travel.none", "travel.free", "travel.shows", "travel.holds", "travel.asked", "travel.frame",
	"sharp.verdict", "sharp.least", "sharp.wider", "sharp.scaled", "sharp.across", "sharp.along", "sharp.both",
	"sharp.longer", "sharp.beside", "sharp.light", "focus.where",
	"mains.swing", "mains.steady", "mains.remedy", "frame.sensor", "frame.eye", "sharp.fringe",
	"lux.needed", "lux.source", "lux.suns", "lux.given", "lux.ways", "motion.speed", "motion.drag", "motion.view",
	"motion.smear", "motion.blur_shutter", "motion.sharp_shutter", "motion.best", "motion.as_good", "light.known",
	"light.falls", "light.retreat", "light.twin", "glare.seen", "glare.gone", "glare.none", "glare.matt",
	"glare.polarise", "lamps.cut", "lamps.turned", "lamps.facing",
}

// Terminal, JSON and guide tell the same, figure by figure: what stands on the terminal stands in the guide in the
// same words, and JSON has the same number but for rounding.
func TestOneFigureIsToldAlike(t *testing.T) {
	told := map[string]bool{}
	for _, setup := range setups {
		t.Run(setup, func(t *testing.T) {
			flags := append(strings.Fields(setup), "--pixels", "240x160")
			art, picture := jobtest.WritePattern(t, 150, 100)
			plan := layout.Rounded(planOf(t, art, flags)) // as size and make do
			r := report.Of(plan)
			guide := guideText(t, guideOf(t, plan, r, picture))
			if made[setup] {
				requireMade(t, r, plan.Backdrop.Orientation, guide, art, flags)
			}
			terminal := plain(output(t, append([]string{"size", art, "--verbose"}, flags...)...))
			var figures any
			require.NoError(t, json.Unmarshal([]byte(output(t, append([]string{"size", art, "--json"}, flags...)...)), &figures))

			glance := output(t, append([]string{"size", art}, flags...)...)
			requireGlance(t, glance)
			for _, line := range r.Glance() {
				require.Contains(t, plain(glance), plain(line.Text.String()))
				for _, figure := range line.Text.Figures() {
					requireInJSON(t, figures, figure, line.Name)
				}
			}
			require.NotEmpty(t, r.Facts())
			for _, f := range r.Facts() {
				text := plain(f.Text.String())
				require.Contains(t, terminal, text, f.Key)
				for _, key := range guideTells {
					if f.Key == key {
						told[key] = true
						require.Contains(t, strings.ToLower(guide), strings.ToLower(text), key)
					}
				}
				for _, figure := range f.Text.Figures() {
					requireInJSON(t, figures, figure, f.Key)
				}
			}
			for _, table := range []report.Table{r.Stops(), r.Focuses()} {
				for _, row := range table.Rows {
					var cells []string
					for _, c := range row.Cells {
						cells = append(cells, c.String())
						for _, figure := range c.Figures() {
							requireInJSON(t, figures, figure, table.Heads[0])
						}
					}
					line := strings.Join(cells, " ")
					if table.Heads[0] == "stop" { // size tells the focuses in words
						require.Contains(t, terminal, line)
					}
					if row.Own {
						line = cells[0] + " (plan) " + strings.Join(cells[1:], " ")
					}
					require.Contains(t, guide, line)
				}
			}
		})
	}
	for setup := range made {
		require.Contains(t, setups, setup)
	}
	for _, key := range guideTells {
		require.True(t, told[key], "no set-up has anything to tell of %s", key)
	}
}

// requireGlance requires that what size says at first fits a screen.
func requireGlance(t *testing.T, text string) {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	require.LessOrEqual(t, len(lines), 14, text)
	for _, line := range lines {
		require.LessOrEqual(t, utf8.RuneCountInString(line), 80, line)
	}
}

// output is what the program writes.
func output(t *testing.T, args ...string) string {
	t.Helper()
	out, err := exec.Command(programtest.Path(t), args...).Output()
	require.NoError(t, err, strings.Join(args, " "))
	return string(out)
}

// planOf is the plan that size tells, with even cells: where the paper may lie either way, as make lays it.
func planOf(t *testing.T, art string, flags []string) layout.Plan {
	t.Helper()
	var words ask.Make
	set := pflag.NewFlagSet("make", pflag.ContinueOnError)
	words.Register(set)
	require.NoError(t, set.Parse(flags))
	require.NoError(t, words.Of(art))
	order, err := words.Order()
	require.NoError(t, err)
	order.Setup.Proportions = 1.5
	plans, err := order.Setup.Plans()
	require.NoError(t, err)
	if len(plans) == 1 {
		return plans[0]
	}
	laid, err := order.Laid(t.Context())
	require.NoError(t, err)
	return laid
}

// guideOf is a plan's guide with blank views in place of those of the drop, which take most of the time that a make
// does.
func guideOf(t *testing.T, plan layout.Plan, told *report.Report, picture image.Image) []byte {
	t.Helper()
	blank := image.NewGray(image.Rect(0, 0, 8, 8))
	seamMap, err := guide.PackSeamMap(plan, image.NewRGBA(seammap.Find(plan).Map))
	require.NoError(t, err)
	job := guide.Job{
		Name: "pattern", CheckCode: "000000", Plan: plan, Told: told, PPI: 100,
		Picture: texture.New(&artwork.Picture{Image: picture}), SeamMap: seamMap,
		DropView: blank,
	}
	if plan.Picture.Look != layout.Bulged {
		job.Looks = [2]image.Image{blank, blank}
	}
	var out bytes.Buffer
	require.NoError(t, guide.Write(&out, job))
	return out.Bytes()
}

// requireMade requires that make comes to a plan of which as much is told, and that its guide says as much.
func requireMade(t *testing.T, told *report.Report, lies layout.Orientation, guide, art string, flags []string) {
	t.Helper()
	folder := programtest.Make(t, art, append(flags, "--seams", "even", "--orientation", string(lies))...)
	var job layout.Plan
	text, err := os.ReadFile(filepath.Join(folder, "job.json"))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &job))
	tells := report.Of(job)
	require.Equal(t, told.Figures(0), tells.Figures(0))
	require.Equal(t, told.Facts(), tells.Facts())
	data, err := os.ReadFile(filepath.Join(folder, "guide.pdf"))
	require.NoError(t, err)
	bare := func(text string) []string { return strings.Split(own.ReplaceAllString(text, ""), ". ") }
	require.Equal(t, bare(guide), bare(guideText(t, data)))
}

var (
	// head is what stands at the top of a page of the guide: job, check code, number.
	head = regexp.MustCompile(`^.*? assembly guide check code [0-9A-F]{6} \d+ / \d+`)
	// own is what only the job's artwork tells: its resolution and its check code.
	own     = regexp.MustCompile(`[\d.]+ pixels to the inch|\b[0-9A-F]{6}\b`)
	minus   = regexp.MustCompile(`–(\d)`)
	strange = strings.NewReplacer("\u2019", "'", "\u00d7", "x", "\u00a0", " ")
)

// plain is a text with one blank between words, and the terminal's signs in place of type's.
func plain(text string) string {
	return minus.ReplaceAllString(strings.Join(strings.Fields(strange.Replace(text)), " "), "-$1")
}

// guideText is all that a guide says, page after page, as PDFium reads it.
func guideText(t *testing.T, data []byte) string {
	t.Helper()
	doc := pdftest.Open(t, data)
	var pages []string
	for page := range doc.PageCount() {
		pages = append(pages, strings.TrimSpace(head.ReplaceAllString(plain(doc.Text(page+1)), "")))
	}
	return strings.Join(pages, " ")
}

// requireInJSON requires that JSON has a figure where it says, and the same number but for rounding.
func requireInJSON(t *testing.T, figures any, f report.Figure, key string) {
	t.Helper()
	require.False(t, math.IsNaN(f.Value) || math.IsInf(f.Value, 0), "%s: %s is no number", key, f.Path)
	if f.Path == "" {
		return
	}
	at := figures
	for _, name := range strings.Split(f.Path, ".") {
		switch inside := at.(type) {
		case map[string]any:
			at = inside[name]
		case []any:
			i, err := strconv.Atoi(name)
			require.NoError(t, err, f.Path)
			require.Less(t, i, len(inside), f.Path)
			at = inside[i]
		}
	}
	value, is := at.(float64)
	require.True(t, is, "%s: JSON has no number at %s", key, f.Path)
	number := f.Number()
	if mark, stop := strings.CutPrefix(number, "f/"); stop {
		n, err := strconv.ParseFloat(mark, 64)
		require.NoError(t, err)
		if shot.ExposureStops(n, value) != 0 { // else the mark of the full stop itself: f/11 for 11.31
			require.InDelta(t, value, n, 0.05+1e-9, f.Path)
		}
		return
	}
	if under, fraction := strings.CutPrefix(number, "1/"); fraction {
		number, value = under, 1/value
	}
	n, err := strconv.ParseFloat(strings.ReplaceAll(number, ",", ""), 64)
	require.NoError(t, err, "%s: %s", key, number)
	if f.Unit == report.Percent {
		value *= 100
	}
	place := math.Pow10(-f.Decimals)
	most := place / 2
	if f.OneSided() {
		most = place
	}
	require.InDelta(t, value, n, most*(1+1e-9)+1e-9*math.Abs(value), fmt.Sprintf("%s: %s at %s", key, number, f.Path))
}
