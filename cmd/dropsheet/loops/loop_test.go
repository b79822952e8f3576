package loops

import (
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/pdf/pdftest"

	"github.com/stretchr/testify/require"
)

// paperJob is what the loop reads of a job file: by its own words, not by the program's types.
type paperJob struct {
	Drop struct {
		Body     string  `json:"body"`
		Diameter float64 `json:"diameter_mm"`
		Held     float64 `json:"held_mm"`
		Index    float64 `json:"index"`
		Focal    float64 `json:"focal_length_mm"`
		Distance float64 `json:"distance_mm"`
		Camera   float64 `json:"camera_distance_mm"`
		Reverses string  `json:"reverses"`
		Oval     float64 `json:"height_over_width"` // 0: round
	} `json:"drop"`
	Picture struct {
		Width  float64 `json:"width_mm"`
		Height float64 `json:"height_mm"`
		Fill   float64 `json:"fill"`
	} `json:"picture"`
	Print struct {
		Grid struct {
			WidthPx int `json:"width_px"`
		} `json:"grid"`
	} `json:"print"`
	Backdrop struct {
		Width    float64 `json:"width_mm"`
		Height   float64 `json:"height_mm"`
		Surround string  `json:"surround"`
	} `json:"backdrop"`
	Sheets []struct {
		Name   string                                `json:"name"`
		Page   int                                   `json:"page"`
		Cell   struct{ X, Y, Width, Height float64 } `json:"cell_mm"`
		OnPage struct{ X, Y float64 }                `json:"on_page_mm"`
	} `json:"sheets"`
}

func readPaperJob(t *testing.T, folder string) (j paperJob) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(folder, "job.json"))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &j))
	return j
}

// pasted is the board as someone would paste it: pages rendered, cells cut out and laid at their places.
type pasted struct {
	*image.RGBA
	pxPerMM float64
	covered []int // how many cells lie on each pixel's centre
}

const boardDPI = 100

// fineSteps is how many times finer than the board pages are rendered, and averaged. PDFium moves a picture's edges to
// whole pixels of the page, which shows where detail is as large as it is in a coarse print.
func fineSteps(j paperJob, dpi int) int {
	if float64(j.Print.Grid.WidthPx)/j.Picture.Width*25.4 < float64(dpi) {
		return 4
	}
	return 2
}

func paste(t *testing.T, j paperJob, sheets []byte) pasted {
	t.Helper()
	return pasteFinely(t, j, sheets, boardDPI)
}

func pasteFinely(t *testing.T, j paperJob, sheets []byte, dpi int) pasted {
	t.Helper()
	doc := pdftest.Open(t, sheets)
	require.Equal(t, len(j.Sheets), doc.PageCount())
	b := pasted{pxPerMM: float64(dpi) / 25.4}
	w, h := int(j.Backdrop.Width*b.pxPerMM), int(j.Backdrop.Height*b.pxPerMM)
	b.RGBA, b.covered = image.NewRGBA(image.Rect(0, 0, w, h)), make([]int, w*h)
	steps := fineSteps(j, dpi)
	fine := b.pxPerMM * float64(steps)
	for _, s := range j.Sheets {
		page := doc.Render(s.Page, dpi*steps)
		cell := image.Rect( // whole pixels of the page within the cut
			int(math.Ceil(s.OnPage.X*fine)), int(math.Ceil(s.OnPage.Y*fine)),
			int((s.OnPage.X+s.Cell.Width)*fine), int((s.OnPage.Y+s.Cell.Height)*fine))
		for y := max(0, int(s.Cell.Y*b.pxPerMM)-1); y < min(h, int((s.Cell.Y+s.Cell.Height)*b.pxPerMM)+2); y++ {
			for x := max(0, int(s.Cell.X*b.pxPerMM)-1); x < min(w, int((s.Cell.X+s.Cell.Width)*b.pxPerMM)+2); x++ {
				bx, by := (float64(x)+0.5)/b.pxPerMM-s.Cell.X, (float64(y)+0.5)/b.pxPerMM-s.Cell.Y
				if bx < 0 || by < 0 || bx >= s.Cell.Width || by >= s.Cell.Height {
					continue
				}
				b.covered[y*w+x]++
				b.SetRGBA(x, y, mean(page, cell, (bx+s.OnPage.X)*fine, (by+s.OnPage.Y)*fine, steps))
			}
		}
	}
	return b
}

// mean averages n by n pixels about a point; past the cut the cell's outermost ones stand in, since what lies
// there is cut off.
func mean(m *image.RGBA, cell image.Rectangle, x, y float64, n int) color.RGBA {
	var r, g, b int
	x0, y0 := int(math.Round(x-float64(n)/2)), int(math.Round(y-float64(n)/2))
	for v := range n {
		for u := range n {
			c := m.RGBAAt(max(cell.Min.X, min(x0+u, cell.Max.X-1)), max(cell.Min.Y, min(y0+v, cell.Max.Y-1)))
			r, g, b = r+int(c.R), g+int(c.G), b+int(c.B)
		}
	}
	n *= n
	return color.RGBA{uint8((r + n/2) / n), uint8((g + n/2) / n), uint8((b + n/2) / n), 255}
}

// hangs is the artwork turned as the drop demands, in the middle of the board, and beyond it the surround's
// colour or the artwork's outermost pixels: what hangs at each pixel of the board.
type hangs struct {
	art           *image.RGBA
	coloured      bool
	beyond        color.RGBA
	columns, rows [][]run
}

func newHangs(j paperJob, art *image.RGBA, board pasted) hangs {
	turns := j.Drop.Reverses
	h := hangs{
		art: art,
		columns: alongAxis(board.Rect.Dx(), board.pxPerMM, j.Backdrop.Width, j.Picture.Width, art.Rect.Dx(),
			turns == "both" || turns == "x"),
		rows: alongAxis(board.Rect.Dy(), board.pxPerMM, j.Backdrop.Height, j.Picture.Height, art.Rect.Dy(),
			turns == "both" || turns == "y"),
	}
	_, err := fmt.Sscanf(j.Backdrop.Surround, "#%02x%02x%02x", &h.beyond.R, &h.beyond.G, &h.beyond.B)
	h.coloured = err == nil
	return h
}

const hungSteps = 8 // a board pixel is averaged over as many places each way

// run is how many of a board pixel's places, one way, lie on the same pixel of the artwork, and whether on the
// picture.
type run struct {
	pixel, places int
	on            bool
}

// alongAxis are the places of each of n board pixels, one way, on an artwork of so many pixels that lie turned or not.
func alongAxis(n int, pxPerMM, boardMM, pictureMM float64, pixels int, reversed bool) [][]run {
	all := make([][]run, n)
	for i := range all {
		for k := range hungSteps {
			x := ((float64(i)+(float64(k)+0.5)/hungSteps)/pxPerMM-boardMM/2)/pictureMM + 0.5
			if reversed {
				x = 1 - x
			}
			next := run{min(max(int(x*float64(pixels)), 0), pixels-1), 1, x >= 0 && x < 1}
			if last := len(all[i]) - 1; last >= 0 && all[i][last].pixel == next.pixel && all[i][last].on == next.on {
				all[i][last].places++
			} else {
				all[i] = append(all[i], next)
			}
		}
	}
	return all
}

// at is what hangs at a board pixel, averaged over it.
func (h hangs) at(x, y int) color.RGBA {
	var r, g, b int
	for _, v := range h.rows[y] {
		row := h.art.Pix[v.pixel*h.art.Stride:]
		for _, u := range h.columns[x] {
			n, c := u.places*v.places, h.beyond
			if !h.coloured || u.on && v.on {
				c = color.RGBA{R: row[4*u.pixel], G: row[4*u.pixel+1], B: row[4*u.pixel+2]}
			}
			r, g, b = r+n*int(c.R), g+n*int(c.G), b+n*int(c.B)
		}
	}
	const n = hungSteps * hungSteps
	return color.RGBA{uint8(r / n), uint8(g / n), uint8(b / n), 255}
}

// decibels is the peak signal-to-noise ratio for a mean squared error of 8-bit levels.
func decibels(meanSquare float64) float64 { return 10 * math.Log10(255*255/meanSquare) }

// The closed loop: make, render with PDFium, cut and paste by the job file alone, compare with the turned
// artwork, look through the drop.
func TestClosedLoop(t *testing.T) {
	for _, c := range []struct{ name, flags string }{
		{"A4 portrait, ball, picture finer than the print", "--paper A4 --orientation portrait --ppi 60"},
		{"A4 landscape, ball, lossless, fit inside", "--paper A4 --orientation landscape --lossless --fit inside " +
			"--distance 30cm"},
		{"letter portrait, ball, lossless, light from the right", "--paper letter --orientation portrait --lossless " +
			"--light-from top-right"},
		{"letter landscape, ball, light from below", "--paper letter --orientation landscape --light-from bottom-left"},
		{"A4 portrait, upright rod, light from below right", "--paper A4 --orientation portrait --look bulged " +
			"--body upright-rod --light-from bottom-right"},
		{"letter landscape, level rod, lossless", "--paper letter --orientation landscape --look bulged " +
			"--body level-rod --lossless"},
		{"A4, ball, in a colour, picture finer than the print", "--surround #203040 --surround-size 560x400mm --ppi 60"},
		{"letter, upright rod, the edge goes on, lossless, light from below right",
			"--paper letter --look bulged --body upright-rod --surround stretch --surround-size 520x450mm " +
				"--light-from bottom-right --lossless"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			path, art := jobtest.WritePattern(t, 1200, 900)
			// Even cells: their seams run through whatever is there, neither flat nor busy by choice.
			j, board := makeAndPaste(t, path, append(strings.Fields(c.flags), "--seams", "even")...)
			comparePasted(t, j, board, art)
			lookUpright(t, j, board, art)
		})
	}
}

// makeAndPaste makes a job and pastes it up. The camera has few pixels: nothing of the proof matters here.
func makeAndPaste(t *testing.T, path string, flags ...string) (paperJob, pasted) {
	t.Helper()
	folder := programtest.Make(t, path, flags...)
	sheets, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
	require.NoError(t, err)
	j := readPaperJob(t, folder)
	require.Greater(t, len(j.Sheets), 1)
	return j, paste(t, j, sheets)
}

// Seams that slid run through detail by choice, where any print is further from its artwork than in a flat
// sky. So their surroundings are held against the same places of a job with even cells, where no seam is
// near: at most 3 dB worse, in JPEG and without loss.
func TestSlidSeamsPasteAsWell(t *testing.T) {
	path, art := jobtest.WritePattern(t, 1200, 900)
	for _, kind := range [][]string{nil, {"--lossless"}} {
		slid, with := makeAndPaste(t, path, append(kind, "--distance", "18cm")...)
		even, without := makeAndPaste(t, path, append(kind, "--distance", "18cm", "--seams", "even")...)
		w, hung := with.Rect.Dx(), newHangs(slid, art, with)
		var seam, control, n float64
		for i := range with.covered {
			xMM, yMM := (float64(i%w)+0.5)/with.pxPerMM, (float64(i/w)+0.5)/with.pxPerMM
			if !nearSeam(slid, xMM, yMM) || nearSeam(even, xMM, yMM) {
				continue
			}
			want := hung.at(i%w, i/w)
			for _, board := range []struct {
				*float64
				pasted
			}{{&seam, with}, {&control, without}} {
				got := board.RGBAAt(i%w, i/w)
				*board.float64 += square(got.R, want.R) + square(got.G, want.G) + square(got.B, want.B)
			}
			n += 3
		}
		require.Greater(t, n, 1000.0, "the seams moved")
		t.Logf("%v: %.1f dB within 1 mm of slid seams, %.1f dB there without a seam", kind, decibels(seam/n),
			decibels(control/n))
		require.GreaterOrEqual(t, decibels(seam/n), decibels(control/n)-3)
	}
}

// comparePasted holds the pasted board against the turned artwork: nothing uncovered or pasted twice, at
// least 30 dB over the whole and, on the picture, no worse than 3 dB less within a millimetre of the seams. A
// surround has hardly any detail to get wrong, so it may not stand in for the picture.
func comparePasted(t *testing.T, j paperJob, board pasted, art *image.RGBA) {
	t.Helper()
	w, hung := board.Rect.Dx(), newHangs(j, art, board)
	var all, picture, near, allN, pictureN, nearN float64
	for i, n := range board.covered {
		x, y := i%w, i/w
		if n != 1 { // asked first, since require takes longer than all else here
			require.FailNow(t, "not one cell on a place", "%d cells on board pixel (%d, %d)", n, x, y)
		}
		xMM, yMM := (float64(x)+0.5)/board.pxPerMM, (float64(y)+0.5)/board.pxPerMM
		got, want := board.RGBAAt(x, y), hung.at(x, y)
		if got.R > 240 && got.G > 240 && got.B > 240 {
			require.FailNow(t, "bare paper", "at board (%.1f, %.1f) mm", xMM, yMM)
		}
		d := square(got.R, want.R) + square(got.G, want.G) + square(got.B, want.B)
		all, allN = all+d, allN+3
		if !onPicture(j, xMM, yMM) {
			continue
		}
		picture, pictureN = picture+d, pictureN+3
		if nearSeam(j, xMM, yMM) {
			near, nearN = near+d, nearN+3
		}
	}
	whole, inside, seams := decibels(all/allN), decibels(picture/pictureN), decibels(near/nearN)
	t.Logf("%s: %d sheets, whole board %.1f dB, picture %.1f dB, within 1 mm of seams %.1f dB", t.Name(), len(j.Sheets),
		whole, inside, seams)
	require.GreaterOrEqual(t, min(whole, inside), 30.0)
	require.GreaterOrEqual(t, seams, inside-3)
}

// onPicture tells whether a board place is on the picture, which lies in the board's middle.
func onPicture(j paperJob, x, y float64) bool {
	return math.Abs(x-j.Backdrop.Width/2) < j.Picture.Width/2 && math.Abs(y-j.Backdrop.Height/2) < j.Picture.Height/2
}

func square(a, b uint8) float64 { d := float64(a) - float64(b); return d * d }

// nearSeam tells whether a board place is within 1 mm of a cell's edge that is not the board's.
func nearSeam(j paperJob, x, y float64) bool {
	for _, s := range j.Sheets {
		for _, edge := range []struct{ at, place, end float64 }{
			{s.Cell.X, x, j.Backdrop.Width}, {s.Cell.X + s.Cell.Width, x, j.Backdrop.Width},
			{s.Cell.Y, y, j.Backdrop.Height}, {s.Cell.Y + s.Cell.Height, y, j.Backdrop.Height},
		} {
			if edge.at > 0.1 && edge.at < edge.end-0.1 && math.Abs(edge.at-edge.place) < 1 {
				return true
			}
		}
	}
	return false
}

// lookUpright looks at the pasted board through the middle of the drop, where the picture is hardly bent, and
// finds the artwork upright: its likeness to the artwork at the handbook's scale is high, and to every
// mirrored or turned artwork lower.
func lookUpright(t *testing.T, j paperJob, board pasted, art *image.RGBA) {
	t.Helper()
	const n = 81 // points each way
	r := j.Drop.Diameter / 2
	// Across what the body bends: the ball lens at finite camera distance, y = b (1 + L/D - L/f) (Hecht,
	// Optics, 5.2 and 6.1). Along a rod: straight through, but for the parallel shift in its thickness 2R (1 -
	// 1/n).
	bent := -(1 + j.Drop.Distance/j.Drop.Camera - j.Drop.Distance/j.Drop.Focal)
	straight := (j.Drop.Camera + j.Drop.Distance - 2*r*(1-1/j.Drop.Index)) / j.Drop.Camera
	kx, ky := bent, bent
	switch j.Drop.Body {
	case "upright-rod":
		ky = straight
	case "level-rod":
		kx = straight
	}
	// Look at the part of the picture that holds the letter.
	halfX, halfY := 0.055*j.Picture.Width/kx, 0.09*j.Picture.Height/ky
	seen := make([]float64, 0, n*n)
	asDrawn := map[string][]float64{}
	for v := range n {
		for u := range n {
			x, y := (float64(u)/(n-1)*2-1)*halfX, (float64(v)/(n-1)*2-1)*halfY
			bx, by, ok := lookThrough(j.Drop.Body, r, 1, j.Drop.Index, j.Drop.Camera, j.Drop.Distance, x, y)
			require.True(t, ok)
			c := board.RGBAAt(int((bx+j.Backdrop.Width/2)*board.pxPerMM), int((by+j.Backdrop.Height/2)*board.pxPerMM))
			seen = append(seen, grey(c))
			for name, flip := range map[string][2]float64{"upright": {1, 1}, "mirrored": {-1, 1}, "upside down": {1, -1},
				"turned": {-1, -1}} {
				px := (0.5 + flip[0]*x*kx/j.Picture.Width) * float64(art.Rect.Dx())
				py := (0.5 + flip[1]*y*ky/j.Picture.Height) * float64(art.Rect.Dy())
				asDrawn[name] = append(asDrawn[name], grey(art.RGBAAt(int(px), int(py))))
			}
		}
	}
	upright := likeness(seen, asDrawn["upright"])
	require.Greater(t, upright, 0.85, "the drop must show the artwork upright")
	for _, name := range []string{"mirrored", "upside down", "turned"} {
		require.Less(t, likeness(seen, asDrawn[name]), upright-0.2,
			fmt.Sprintf("the drop must not show the artwork %s", name))
	}
}

func grey(c color.RGBA) float64 { return float64(c.R) + float64(c.G) + float64(c.B) }

// likeness is the correlation of two series, 1 for the same and 0 for unlike.
func likeness(a, b []float64) float64 {
	var ma, mb float64
	for i := range a {
		ma, mb = ma+a[i]/float64(len(a)), mb+b[i]/float64(len(b))
	}
	var ab, aa, bb float64
	for i := range a {
		ab, aa, bb = ab+(a[i]-ma)*(b[i]-mb), aa+(a[i]-ma)*(a[i]-ma), bb+(b[i]-mb)*(b[i]-mb)
	}
	return ab / math.Sqrt(aa*bb)
}

// Figures worked outside this program, as flip/sight_test.go tells (mpmath, 50 digits), by the loop's own trace:
// two traces that share nothing agree.
func TestLoopTraceWorkedFigures(t *testing.T) {
	for _, c := range []struct{ diameter, camera, distance, fill, want float64 }{
		{4.6, 1000, 200, 0.5, 55.678}, {4.6, 1000, 200, 0.9, 185.385}, {6, 1500, 400, 0.8, 251.076},
	} {
		edge := c.camera * math.Tan(math.Asin(c.diameter/2/c.camera))
		bx, by, ok := lookThrough("ball", c.diameter/2, 1, 1.333, c.camera, c.distance, c.fill*edge*0.6, c.fill*edge*0.8)
		require.True(t, ok)
		require.InDelta(t, c.want, math.Hypot(bx, by), 0.0006)
	}
}
