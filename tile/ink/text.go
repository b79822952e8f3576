package ink

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"strings"

	"dropsheet/flip/units"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// Weight is the strength of a face.
type Weight int

// The weights, both of the Go family.
const (
	Regular Weight = iota
	Bold
)

var weights = [...]*opentype.Font{Regular: must(opentype.Parse(goregular.TTF)), Bold: must(opentype.Parse(gobold.TTF))}

// must is for the fonts that are built in: they are either sound or the program is not.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// Face is a weight at a size. It serves one goroutine at a time.
type Face struct{ face font.Face }

// NewFace is a weight at a size, in pixels of the em.
func NewFace(w Weight, sizePx float64) Face {
	// At as many dots as an inch has points, the size, which is in points, is in pixels.
	options := opentype.FaceOptions{Size: sizePx, DPI: units.PointsPerInch, Hinting: font.HintingNone}
	measured := must(opentype.NewFace(weights[w], &options))
	return Face{&letters{Face: measured, font: weights[w], size: sixtyFourths(sizePx)}}
}

// WidthPx is how far a line of text goes.
func (f Face) WidthPx(text string) float64 { return float64(font.MeasureString(f.face, text)) / 64 }

// CapPx is the height of a capital letter.
func (f Face) CapPx() float64 { return float64(f.face.Metrics().CapHeight) / 64 }

// LinePx is the distance between the baselines of two lines: an eighth more than the font asks, since short
// lines read better loose.
func (f Face) LinePx() float64 { return math.Ceil(float64(f.face.Metrics().Height) / 64 * 1.125) }

// Text writes a line that starts at a point of its baseline.
func (c Canvas) Text(f Face, at Point, colour color.RGBA, text string) {
	f.write(c.picture, at, colour, text)
}

// TextWithKeyline is Text with a rim of another colour, that many whole pixels wide, so that it reads on any ground.
func (c Canvas) TextWithKeyline(f Face, at Point, colour, keyline color.RGBA, keylinePx int, text string) {
	at = at.snapped()
	room := f.LinePx() // more than any letter reaches above its baseline, below it or past its ends
	mask := image.NewAlpha(bounds([]Path{Rect{at.X, at.Y, at.X + f.WidthPx(text), at.Y}.Grow(room).Outline()}))
	f.write(mask, at, color.RGBA{A: 0xff}, text)
	rim := image.NewUniform(keyline)
	for dy := -keylinePx; dy <= keylinePx; dy++ {
		for dx := -keylinePx; dx <= keylinePx; dx++ {
			if dx*dx+dy*dy <= keylinePx*keylinePx+1 { // a round pen
				draw.DrawMask(c.picture, mask.Rect.Add(image.Pt(dx, dy)), rim, image.Point{}, mask, mask.Rect.Min, draw.Over)
			}
		}
	}
	c.Text(f, at, colour, text)
}

// write draws the line's letters.
func (f Face) write(on draw.Image, at Point, colour color.RGBA, text string) {
	at = at.snapped() // letters centred on a place often lie half-way between two sixty-fourths
	d := font.Drawer{
		Dst: on, Src: image.NewUniform(colour), Face: f.face,
		Dot: fixed.Point26_6{X: sixtyFourths(at.X), Y: sixtyFourths(at.Y)},
	}
	d.DrawString(text)
}

// sixtyFourths is a number of pixels as fonts count them.
func sixtyFourths(px float64) fixed.Int26_6 { return fixed.Int26_6(math.Round(px * 64)) }

// Box is the rectangle that a line of text takes when it is centred on a point: its width and the height of a capital.
func (f Face) Box(centre Point, text string) Rect {
	w, h := f.WidthPx(text)/2, f.CapPx()/2
	return Rect{centre.X - w, centre.Y - h, centre.X + w, centre.Y + h}
}

// Wrap breaks text at its plain spaces, not at those that do not break, into lines of at most that width; a
// longer word gets a line of its own.
func (f Face) Wrap(text string, widthPx float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Split(text, " ") {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if line != "" && f.WidthPx(longer) > widthPx {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
