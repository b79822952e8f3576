package seamsight

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// Model sees a plan's board with its picture, under its camera and lamps. It is safe for use by many goroutines.
type Model struct {
	plan    layout.Plan
	seamMM  float64
	paint   *paint
	light   layout.Light
	direct  direct
	through through
	pxPerMM float64 // frame pixels on a millimetre of the drop's plane
	airyPx  float64 // diameter of the Airy disc
}

// Path is a way in which the camera sees the board.
type Path int

// The paths.
const (
	Direct  Path = iota // beside the drop
	Through             // through the drop
)

var pathNames = [...]string{Direct: "beside the drop", Through: "in the drop"}

// String says where in the frame the path shows.
func (p Path) String() string { return pathNames[p] }

// MarshalText writes the path's words.
func (p Path) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// New prepares the model for a plan that Setup.Plan made or Plan.Check passed, with its artwork. A seam is
// seamMM wide, above 0.
func New(p layout.Plan, picture *texture.Texture, seamMM float64) *Model {
	f := newFrame(p)
	return &Model{
		plan: p, seamMM: seamMM, paint: newPaint(p, picture), light: p.Light(),
		direct: newDirect(p, f), through: newThrough(p, f),
		pxPerMM: 1 / p.Camera.PixelMM(), airyPx: p.Camera.AiryPx(),
	}
}

// AtStop is the model with another stop of the lens, the focus left where it is. Little is worked out anew.
func (m *Model) AtStop(fNumber float64) *Model {
	out := *m
	out.plan.Camera.FNumber = fNumber
	out.direct = newDirect(out.plan, m.direct.frame)
	out.through = m.through.blurred(out.plan.Camera.PupilMM())
	out.airyPx = out.plan.Camera.AiryPx()
	return &out
}

// WithSeams is the model with seams of another width, above 0.
func (m *Model) WithSeams(seamMM float64) *Model {
	out := *m
	out.seamMM = seamMM
	return &out
}

// Sighting is how one path shows a place of a seam. The zero Sighting is out of sight.
type Sighting struct {
	Frame   layout.FramePoint `json:"frame_px"`
	WidthPx float64           `json:"width_px"`  // of the seam
	PxPerMM float64           `json:"px_per_mm"` // of board, across the seam
	AlongPx float64           `json:"along_px_per_mm"`
	// how wide it looks: its width, a pixel and the blur of its middle, in quadrature
	VisiblePx float64 `json:"visible_px"`
	BlurPx    float64 `json:"blur_px"`   // across the seam: defocus and Airy disc, in quadrature
	Picture   float64 `json:"picture"`   // luminance that the print has there, 1 the artwork's white
	Contrast  float64 `json:"contrast"`  // Weber, at the seam's peak
	Threshold float64 `json:"threshold"` // the contrast at which it is just seen
	Verdict   Verdict `json:"verdict"`
}

// OverThreshold is the contrast as a multiple of the threshold; 0 out of sight.
func (s Sighting) OverThreshold() float64 {
	if s.Verdict == OutOfSight {
		return 0
	}
	return s.Contrast / s.Threshold
}

// At is how a path shows a seam that runs down ("x") or across ("y") at a place in board mm.
func (m *Model) At(xMM, yMM float64, axis string, path Path) Sighting {
	l, ok := m.look(xMM, yMM, axis, path)
	if !ok {
		return Sighting{}
	}
	if path == Through {
		b := m.plan.Backdrop
		l = m.through.refined(l, xMM-b.WidthMM/2, yMM-b.HeightMM/2, axis)
	}
	return m.sighting(l, xMM, yMM)
}

// look is the geometry of At.
func (m *Model) look(xMM, yMM float64, axis string, path Path) (look, bool) {
	x, y := xMM-m.plan.Backdrop.WidthMM/2, yMM-m.plan.Backdrop.HeightMM/2
	if path == Direct {
		return m.direct.look(x, y), true
	}
	return m.through.look(x, y, axis)
}

// sighting judges what a path shows of a place in board mm.
func (m *Model) sighting(l look, xMM, yMM float64) Sighting {
	across := l.across * m.pxPerMM
	widthPx := m.seamMM * across
	defocusPx := l.blur * m.pxPerMM
	airyPx := airyLine * m.airyPx
	blurPx := math.Sqrt(defocusPx*defocusPx + airyPx*airyPx)
	share := peak(widthPx, blurPx, l.asides*m.pxPerMM)
	if !(share > 0) {
		return Sighting{}
	}
	visiblePx := math.Sqrt(widthPx*widthPx + 1 + blurPx*blurPx)
	printed, spread := m.paint.at(xMM, yMM, visiblePx/m.pxPerMM*l.boxX, visiblePx/m.pxPerMM*l.boxY)
	lit := m.light.At(xMM, yMM) * l.light
	// Wrapped, so that no processor subtracts in the same step, which would tell white from white by its last digits.
	picture, seam := float64(printed*lit), float64(board.PaperWhite*lit)
	s := Sighting{
		WidthPx: widthPx, PxPerMM: across, AlongPx: l.along * m.pxPerMM,
		VisiblePx: visiblePx,
		BlurPx:    math.Sqrt(defocusPx*defocusPx + m.airyPx*m.airyPx),
		Picture:   printed,
		Contrast:  share * math.Abs(seam-picture) / (picture + flare),
		Threshold: threshold(picture, spread*lit/(picture+flare), visiblePx),
	}
	if s.Verdict = verdict(s.Contrast / s.Threshold); s.Verdict == Hidden && l.asides > 0 {
		return Sighting{} // nothing but its blur would come in, and that is not seen
	}
	s.Frame = m.pixel(l.at)
	return s
}

// pixel is the frame's pixel for a place of the drop's plane, or the nearest one.
func (m *Model) pixel(p layout.Point) layout.FramePoint {
	c := m.plan.Camera
	w, h := float64(c.WidthPx), float64(c.HeightPx)
	return layout.FramePoint{
		XPx: max(0, min((p.XMM/c.FrameWidthMM+0.5)*w, w)),
		YPx: max(0, min((p.YMM/c.FrameHeightMM+0.5)*h, h)),
	}
}

// CostAt is how plainly a millimetre of seam shows that runs down ("x") or across ("y") at a place in board
// mm: contrast over threshold, times the pixels that it takes up along the frame, on the path that shows it
// more. It is 0 out of sight.
func (m *Model) CostAt(xMM, yMM float64, axis string) float64 {
	cost := 0.0
	for _, path := range [2]Path{Direct, Through} {
		if l, ok := m.look(xMM, yMM, axis, path); ok {
			s := m.sighting(l, xMM, yMM)
			cost = max(cost, s.OverThreshold()*s.AlongPx)
		}
	}
	return cost
}
