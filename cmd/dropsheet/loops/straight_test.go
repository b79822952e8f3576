package loops

import (
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
)

// Pixels of the frame that looks, at the drop: of 2400 pixels over 60 mm, and for the rods, which do not
// magnify along them, so coarse that the print still carries them. The jobs themselves are made for few
// pixels, to be quick.
const (
	framePixelMM = 0.025
	rodPixelMM   = 0.15
	rodDPI       = 150 // of the pasted board
)

// dotsAcross is how many dots the straight loop's artwork has each way.
const dotsAcross = 9

// writeDots draws a grid of dark dots on bright ground that changes slowly, and a letter F: square, side
// pixels each way.
func writeDots(t *testing.T, side int) (path string, m *image.RGBA) {
	t.Helper()
	m = image.NewRGBA(image.Rect(0, 0, side, side))
	radius := 0.02 * float64(side)
	for y := range side {
		for x := range side {
			u, v := (float64(x)+0.5)/float64(side), (float64(y)+0.5)/float64(side)
			ground := [3]float64{150 + 60*u, 190 - 40*v, 170 + 30*u*v}
			dx, dy := math.Mod(u*dotsAcross, 1)-0.5, math.Mod(v*dotsAcross, 1)-0.5
			away := math.Hypot(dx, dy)/dotsAcross*float64(side) - radius
			dark := max(0, min(1, 0.5-away)) // an edge of one pixel
			if u > 0.47 && u < 0.49 && v > 0.52 && v < 0.555 || u > 0.47 && u < 0.505 && v > 0.52 && v < 0.53 {
				dark = 1
			}
			c := color.RGBA{A: 255}
			for i, level := range []*uint8{&c.R, &c.G, &c.B} {
				*level = uint8(math.Round(ground[i]*(1-dark) + 20*dark))
			}
			m.SetRGBA(x, y, c)
		}
	}
	path = filepath.Join(t.TempDir(), "dots.png")
	f, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, m))
	require.NoError(t, f.Close())
	return path, m
}

// straightView is what the camera sees of a pasted board through the drop, a pixel for each of the frame's,
// by the loop's own trace; sides are the fill's.
type straightView struct {
	side       int
	fillPx     float64   // the fill's own width, less than a pixel more than side
	seen, want []float64 // grey levels; want is the artwork laid straight over the fill
	within     []bool    // inside the fill
}

// rod tells whether the body is one.
func (j paperJob) rod() bool { return j.Drop.Body == "upright-rod" || j.Drop.Body == "level-rod" }

// drop is what the job's body shows by the loop's own traces: how far out it is seen in the plane through its middle,
// of a hanging drop its round, and where on the backdrop the camera sees through a place of that plane.
func (j paperJob) drop() (edgeX, edgeY float64, through func(x, y float64) (bx, by float64, ok bool)) {
	edge := func(radius float64) float64 { return j.Drop.Camera * math.Tan(math.Asin(radius/j.Drop.Camera)) }
	if j.Drop.Body == "hanging" {
		p := hangingProfile(j.Drop.Diameter/2, j.Drop.Held/2)
		edgeX = edge(p.halfWidth)
		return edgeX, edgeX * p.roundHalfHeight() / p.halfWidth, func(x, y float64) (bx, by float64, ok bool) {
			return p.lookThrough(j.Drop.Index, j.Drop.Camera, j.Drop.Distance, x, y)
		}
	}
	oval := j.Drop.Oval
	if oval == 0 {
		oval = 1
	}
	radius := j.Drop.Diameter / 2 / math.Cbrt(oval)
	return edge(radius), edge(radius) * oval, func(x, y float64) (bx, by float64, ok bool) {
		return lookThrough(j.Drop.Body, radius, oval, j.Drop.Index, j.Drop.Camera, j.Drop.Distance, x, y)
	}
}

// lookStraight looks through the drop from corner to corner of the fill. turnDeg is how the artwork must appear
// turned, clockwise; size is how many fills its side measures.
func lookStraight(t *testing.T, j paperJob, board pasted, art *image.RGBA, turnDeg, size float64) straightView {
	t.Helper()
	pixel := framePixelMM
	if j.rod() {
		pixel = rodPixelMM
	}
	edgeX, edgeY, through := j.drop()
	half := j.Picture.Fill * max(edgeX, edgeY)
	v := straightView{side: int(2 * half / pixel), fillPx: 2 * half / pixel}
	sin, cos := math.Sincos(turnDeg * math.Pi / 180)
	const fine = 2
	for py := range v.side {
		for px := range v.side {
			var seen, want float64
			in := true
			for k := range fine * fine {
				x := (float64(px) + (float64(k%fine)+0.5)/fine - float64(v.side)/2) * pixel
				y := (float64(py) + (float64(k/fine)+0.5)/fine - float64(v.side)/2) * pixel
				across := math.Hypot(x/edgeX, y/edgeY)
				switch j.Drop.Body {
				case "upright-rod":
					across = math.Abs(x) / edgeX
				case "level-rod":
					across = math.Abs(y) / edgeY
				}
				if across > j.Picture.Fill*0.99 {
					in = false
					continue
				}
				bx, by, ok := through(x, y)
				require.True(t, ok)
				seen += board.between(bx+j.Backdrop.Width/2, by+j.Backdrop.Height/2) / (fine * fine)
				// The artwork, straight: its side covers the fill.
				u, w := (x*cos+y*sin)/(2*half*size)+0.5, (y*cos-x*sin)/(2*half*size)+0.5
				if u < 0 || u > 1 || w < 0 || w > 1 {
					in = false
					continue
				}
				want += patchOf(art, u, w, pixel/fine/(2*half*size)) / (fine * fine)
			}
			v.seen, v.want, v.within = append(v.seen, seen), append(v.want, want), append(v.within, in)
		}
	}
	return v
}

// between reads the board's grey between its four nearest pixels.
func (b pasted) between(xMM, yMM float64) float64 {
	x, y := xMM*b.pxPerMM-0.5, yMM*b.pxPerMM-0.5
	x0, y0 := int(math.Floor(x)), int(math.Floor(y))
	fx, fy := x-float64(x0), y-float64(y0)
	at := func(x, y int) float64 {
		return grey(b.RGBAAt(max(0, min(x, b.Rect.Dx()-1)), max(0, min(y, b.Rect.Dy()-1)))) / 3
	}
	return (at(x0, y0)*(1-fx)+at(x0+1, y0)*fx)*(1-fy) + (at(x0, y0+1)*(1-fx)+at(x0+1, y0+1)*fx)*fy
}

// patchOf is the artwork's grey about a place, averaged over a square whose side is a share of it.
func patchOf(art *image.RGBA, u, v, share float64) (sum float64) {
	const n = 4
	side := float64(art.Rect.Dx())
	for k := range n * n {
		x := (u + ((float64(k%n)+0.5)/n-0.5)*share) * side
		y := (v + ((float64(k/n)+0.5)/n-0.5)*share) * side
		sum += grey(art.RGBAAt(max(0, min(int(x), art.Rect.Dx()-1)), max(0, min(int(y), art.Rect.Dy()-1)))) / 3 / (n * n)
	}
	return sum
}

// similarity is the mean structural similarity of both views over windows of 8 by 8 pixels that lie within
// the fill (Wang, Bovik, Sheikh and Simoncelli, Image quality assessment, IEEE Transactions on Image
// Processing 13, 2004, with its constants 0.01 and 0.03 and even weights; recalled from memory).
func (v straightView) similarity() float64 {
	const (
		window = 8
		c1     = 0.01 * 255 * 0.01 * 255
		c2     = 0.03 * 255 * 0.03 * 255
	)
	var total, windows float64
	for y := 0; y+window <= v.side; y += window / 2 {
		for x := 0; x+window <= v.side; x += window / 2 {
			var a, b, aa, bb, ab, n float64
			whole := true
			for k := range window * window {
				i := (y+k/window)*v.side + x + k%window
				whole = whole && v.within[i]
				a, b, n = a+v.seen[i], b+v.want[i], n+1
				aa, bb, ab = aa+v.seen[i]*v.seen[i], bb+v.want[i]*v.want[i], ab+v.seen[i]*v.want[i]
			}
			if !whole {
				continue
			}
			a, b = a/n, b/n
			aa, bb, ab = aa/n-a*a, bb/n-b*b, ab/n-a*b
			total += (2*a*b + c1) * (2*ab + c2) / ((a*a + b*b + c1) * (aa + bb + c2))
			windows++
		}
	}
	return total / windows
}

// displaced is how far the worst dot that lies wholly within the fill is seen from where it belongs, in frame
// pixels, and how many dots those are. A dot's place is the middle of what is darker than the ground around
// it.
func (v straightView) displaced(turnDeg, size float64) (worst float64, dots int) {
	middle := float64(v.side) / 2
	sin, cos := math.Sincos(turnDeg * math.Pi / 180)
	reach := int(0.4 / dotsAcross * v.fillPx * size) // of a dot's own field
	for row := range dotsAcross {
		for column := range dotsAcross {
			dx, dy := (float64(column)+0.5)/dotsAcross-0.5, (float64(row)+0.5)/dotsAcross-0.5
			x, y := (dx*cos-dy*sin)*size*v.fillPx+middle, (dx*sin+dy*cos)*size*v.fillPx+middle
			place := func(view []float64) (cx, cy float64, ok bool) {
				ground := 0.0
				for pass := range 2 {
					var sum, sx, sy float64
					for j := int(y) - reach; j <= int(y)+reach; j++ {
						for i := int(x) - reach; i <= int(x)+reach; i++ {
							if i < 0 || j < 0 || i >= v.side || j >= v.side || !v.within[j*v.side+i] {
								return 0, 0, false
							}
							level := view[j*v.side+i]
							if pass == 0 {
								ground = max(ground, level)
								continue
							}
							if dark := ground*0.75 - level; dark > 0 {
								sum, sx, sy = sum+dark, sx+dark*(float64(i)+0.5), sy+dark*(float64(j)+0.5)
							}
						}
					}
					if pass == 1 && sum > 0 {
						return sx / sum, sy / sum, true
					}
				}
				return 0, 0, false
			}
			if math.Abs(dx) < 0.05 && math.Abs(dy) < 0.05 {
				continue // the letter is there
			}
			if cx, cy, ok := place(v.seen); ok {
				dots++
				worst = max(worst, math.Hypot(cx-x, cy-y))
			}
		}
	}
	return worst, dots
}

// A straight print, rendered by PDFium, cut and pasted by the job file and looked at by the loop's own trace,
// gives the artwork back: each printed dot within half a frame pixel of its place on a straight grid. A
// bulged one, by the same measure, does not.
func TestStraightLoop(t *testing.T) {
	for _, c := range []struct {
		name, flags   string
		turnDeg, size float64 // of the artwork: clockwise, and its side in fills
		dots          int     // that lie wholly within the fill, at least
	}{
		{"ball, to the edge, lossless, turned", "--look straight --round --turn 30 --lossless", 30, 1, 30},
		{"ball, inside", "--look straight --fit inside", 0, math.Sqrt2 / 2, 60},
		{"pressed flat", "--look straight --oblate 0.85", 0, 1, 25},
		// the ellipse's tangent, 10 degrees askew
		{"drawn long", "--look straight --oblate 1.15 --turn -10", -10,
			math.Hypot(math.Cos(math.Pi/18), math.Sin(math.Pi/18)/1.15), 25},
		{"hanging", "--look straight --body hanging --drop 3.5mm --held 2mm --distance 15cm", 0, 1, 25},
		{"upright rod", "--look straight --body upright-rod --drop 20mm --distance 30cm", 0, 1, 50},
		{"level rod", "--look straight --body level-rod --drop 20mm --distance 30cm", 0, 1, 50},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			path, art := writeDots(t, 700)
			flags := append(strings.Fields(c.flags), "--seams", "even", "--paper", "A5")
			folder := programtest.Make(t, path, flags...)
			sheets, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
			require.NoError(t, err)
			j := readPaperJob(t, folder)
			dpi := boardDPI
			if j.rod() {
				dpi = rodDPI
			}
			board := pasteFinely(t, j, sheets, dpi)
			view := lookStraight(t, j, board, art, c.turnDeg, c.size)
			worst, dots := view.displaced(c.turnDeg, c.size)
			t.Logf("%s: %d sheets, %d dots, the worst %.2f frame pixels off; structural similarity %.3f", c.name,
				len(j.Sheets), dots, worst, view.similarity())
			require.GreaterOrEqual(t, dots, c.dots)
			require.Less(t, worst, 0.3, "under half a pixel, which is as near as a pixel tells")
			require.Greater(t, view.similarity(), 0.9)
			if j.Drop.Body == "hanging" { // seen through a ball as wide, the same print is bent
				j.Drop.Body = "ball"
				worst, _ = lookStraight(t, j, board, art, c.turnDeg, c.size).displaced(c.turnDeg, c.size)
				require.Greater(t, worst, 2.0)
			}
		})
	}
	t.Run("bulged", func(t *testing.T) {
		path, art := writeDots(t, 700)
		folder := programtest.Make(t, path, "--seams", "even")
		sheets, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
		require.NoError(t, err)
		j := readPaperJob(t, folder)
		view := lookStraight(t, j, paste(t, j, sheets), art, 0, 1)
		worst, _ := view.displaced(0, 1)
		require.Greater(t, worst, 2.0, "the measure tells a bent grid from a straight one")
		require.Less(t, view.similarity(), 0.8)
	})
}
