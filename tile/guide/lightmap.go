package guide

import (
	"image"
	"image/color"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/layout/shot"
	"dropsheet/tile/pdf"
)

// The map of the light: its shading's pixels and the contours' lattice along the board's longer side, and the
// grey of the darkest place.
const (
	shadeSidePx   = 240
	latticeSide   = 90
	deepestGrey   = 150
	mostContours  = 6  // over the picture
	boardContours = 20 // over the board, where a surround runs far into the dark
)

// mapFrameMM is what the map keeps free round the board for the corners' figures.
const mapFrameMM = 7.0

// lightMapMM is the height of the map: enough to read it, and at most half of the page.
func (b *book) lightMapMM() float64 {
	const leastMM = 62.0
	p := b.job.Plan.Backdrop
	return min((b.geo.bottom-b.geo.top)/2, max(leastMM, 0.36*b.geo.fullMM()*p.HeightMM/p.WidthMM+2*mapFrameMM))
}

// lightMap draws the light on the board: shading, contours with their stops, the corners' figures, the
// brightest and the darkest place.
func (b *book) lightMap(box layout.Rect, f *shot.LightFigures) {
	p := b.job.Plan
	light, whole := p.Light(), p.Backdrop.Board()
	at := inside(box.Grow(layout.Sides{LeftMM: -mapFrameMM, TopMM: -mapFrameMM, RightMM: -mapFrameMM,
		BottomMM: -mapFrameMM}), p.Backdrop.WidthMM, p.Backdrop.HeightMM)
	k := at.WidthMM / p.Backdrop.WidthMM
	b.placeImage(at, shaded(light, whole, f.FalloffStops), drawingPPI)
	if b.job.edged() {
		b.Outline(b.pictureEdge(at), thin)
	}

	step := contourStep(f.FalloffStops)
	lattice := newLattice(light.StopsAt, whole, latticeSide)
	labels := []layout.Point{}
	for i := 1; i <= boardContours; i++ {
		level := float64(i) * step
		for _, s := range lattice.contour(level) {
			b.Line(at.XMM+k*s[0].XMM, at.YMM+k*s[0].YMM, at.XMM+k*s[1].XMM, at.YMM+k*s[1].YMM, plain)
		}
		if level < f.FalloffStops {
			q := between(light, f.Brightest.Board, f.Darkest.Board, level)
			labels = append(labels, layout.Point{XMM: at.XMM + k*q.XMM, YMM: at.YMM + k*q.YMM})
		}
	}
	b.Frame(at, heavy)
	b.contourLabels(at, labels, step)
	for _, mark := range []struct {
		at  layout.Point
		ink pdf.Shade
	}{{f.Brightest.Board, white}, {f.Darkest.Board, black}} {
		b.ring(at.XMM+k*mark.at.XMM, at.YMM+k*mark.at.YMM, 1.2, mark.ink, pen(black, 0.4))
	}

	top, bottom := at.YMM-2.6, at.BottomMM()+2.6+tinyStyle.CapMM()
	corner := func(x, y float64) string { return set(report.StopsBelow(light.StopsAt(x, y))) }
	figure := tinyStyle.In(black)
	b.Put(figure, at.XMM, top, corner(0, 0))
	b.Put(figure, at.XMM, bottom, corner(0, whole.HeightMM))
	b.PutRight(figure, at.RightMM(), top, corner(whole.WidthMM, 0))
	b.PutRight(figure, at.RightMM(), bottom, corner(whole.WidthMM, whole.HeightMM))
}

// contourStep is the step from one contour to the next, in stops, that draws at most mostContours over the picture.
func contourStep(falloff float64) float64 {
	for _, step := range []float64{0.05, 0.1, 0.25, 0.5, 1, 2} {
		if falloff/step <= mostContours {
			return step
		}
	}
	return 4
}

// between finds a place of that many stops on the way from the brightest place to the darkest, by halving.
func between(l layout.Light, brightest, darkest layout.Point, stops float64) layout.Point {
	on := func(t float64) layout.Point {
		return layout.Point{XMM: brightest.XMM + t*(darkest.XMM-brightest.XMM), YMM: brightest.YMM +
			t*(darkest.YMM-brightest.YMM)}
	}
	near, far := 0.0, 1.0
	for range 40 {
		middle := (near + far) / 2
		if q := on(middle); l.StopsAt(q.XMM, q.YMM) < stops {
			near = middle
		} else {
			far = middle
		}
	}
	return on(far)
}

// contourLabels writes each contour's stops on it, where there is room between the labels before it and the
// board's edge.
func (b *book) contourLabels(at layout.Rect, labels []layout.Point, step float64) {
	const apartMM = 6.5
	var put []layout.Point
	for i, q := range labels {
		text := amount(report.Number(float64(i+1)*step, 2))
		half := labelStyle.Width(text)/2 + 1
		clear := q.XMM-half > at.XMM && q.XMM+half < at.RightMM() && q.YMM-2.4 > at.YMM && q.YMM+2.4 < at.BottomMM()
		for _, o := range put {
			clear = clear && (math.Abs(q.XMM-o.XMM) > 2*half+0.6 || math.Abs(q.YMM-o.YMM) > apartMM-2)
		}
		if clear {
			b.tag(labelStyle, q.XMM, q.YMM, text)
			put = append(put, q)
		}
	}
}

// shaded is the light as a grey picture: white at the brightest place, deepestGrey at the picture's darkest and beyond.
func shaded(l layout.Light, board layout.Rect, falloff float64) image.Image {
	scale := shadeSidePx / math.Max(board.WidthMM, board.HeightMM)
	w, h := max(2, int(board.WidthMM*scale)), max(2, int(board.HeightMM*scale))
	img := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			stops := l.StopsAt(board.WidthMM*(float64(x)+0.5)/float64(w), board.HeightMM*(float64(y)+0.5)/float64(h))
			img.SetGray(x, y, color.Gray{uint8(math.Round(255 - (255-deepestGrey)*math.Min(1, stops/math.Max(falloff, 1e-9))))})
		}
	}
	return img
}
