package shot

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// blurred is a lamp, or its mirror image behind the board, as the whole entrance pupil sees it past the drop:
// from each place on the pupil by a ray of its own, and where it is out of focus, each ray on a pixel of its
// own. Together they are its blur disc, in the drop's plane F/N |d - focus|/d D/focus across, d its distance
// from the pupil (thin lens; Hecht, Optics, 5.2.3). Rays are told by their places on the pupil.
type blurred struct {
	plan     layout.Plan
	at       flip.Vec // from the drop's centre, optical mm
	mirrored bool     // behind the board, which its rays must then cross
}

// crosses is where a ray crosses the plane that far from the pupil.
func (b blurred) crosses(pupil layout.Point, planeMM float64) layout.Point {
	t := planeMM / (b.plan.Drop.CameraMM + b.at.Z)
	return layout.Point{XMM: pupil.XMM + (b.at.X-pupil.XMM)*t, YMM: pupil.YMM + (b.at.Y-pupil.YMM)*t}
}

// shows is the point of the drop's plane behind whose pixel a ray arrives: that pixel looks at where the ray
// crosses the plane in focus.
func (b blurred) shows(pupil layout.Point) layout.Point {
	focusMM := b.plan.Camera.FocusMM
	q, k := b.crosses(pupil, focusMM), b.plan.Drop.CameraMM/focusMM
	return layout.Point{XMM: q.XMM * k, YMM: q.YMM * k}
}

// boardMM is how far the board lies from the pupil.
func (b blurred) boardMM() float64 { return b.plan.Drop.CameraMM + b.plan.Drop.DistanceMM }

// clear tells whether a ray passes the drop. A lamp before the drop has it in its back.
func (b blurred) clear(pupil layout.Point) bool { return b.at.Z <= 0 || b.clearanceMM(pupil) > 0 }

func (b blurred) clearanceMM(pupil layout.Point) float64 {
	from := flip.Vec{X: pupil.XMM, Y: pupil.YMM, Z: -b.plan.Drop.CameraMM}
	return b.plan.Sight().Drop.ClearanceMM(flip.Ray{From: from, Dir: b.at.Sub(from).Unit()})
}

// span is a stretch of the pupil in one direction.
type span struct{ from, to float64 }

func (s span) empty() bool               { return s.from > s.to }
func (s span) nearest(v float64) float64 { return max(s.from, min(v, s.to)) }
func (s span) both(o span) span          { return span{max(s.from, o.from), min(s.to, o.to)} }

// within is the part of a span whose rays, in one direction, cross the plane that far from the pupil no
// further than half from the axis.
func (b blurred) within(s span, atMM, planeMM, half float64) span {
	t := planeMM / (b.plan.Drop.CameraMM + b.at.Z)
	if t == 1 { // all rays meet there
		if math.Abs(atMM) > half {
			return span{1, 0}
		}
		return s
	}
	one, other := (half-atMM*t)/(1-t), (-half-atMM*t)/(1-t)
	return s.both(span{min(one, other), max(one, other)})
}

// seen finds a ray that the frame records: one that arrives in the frame, past the drop, and for a mirror
// image by way of the board. It is the one from the pupil's middle where that is such a ray, else one not far
// from it. ok is false when there is none.
func (b blurred) seen() (pupil layout.Point, ok bool) {
	c, radiusMM := b.plan.Camera, b.plan.Camera.PupilMM()/2
	k := c.FocusMM / b.plan.Drop.CameraMM
	x := b.within(span{-radiusMM, radiusMM}, b.at.X, c.FocusMM, c.FrameWidthMM/2*k)
	y := b.within(span{-radiusMM, radiusMM}, b.at.Y, c.FocusMM, c.FrameHeightMM/2*k)
	if b.mirrored {
		x = b.within(x, b.at.X, b.boardMM(), b.plan.Backdrop.WidthMM/2)
		y = b.within(y, b.at.Y, b.boardMM(), b.plan.Backdrop.HeightMM/2)
	}
	middle := layout.Point{XMM: x.nearest(0), YMM: y.nearest(0)}
	if x.empty() || y.empty() || math.Hypot(middle.XMM, middle.YMM) > radiusMM {
		return layout.Point{}, false
	}
	if b.clear(middle) {
		return middle, true
	}
	// What frame and board leave of the pupil is convex, so the ray that passes the drop furthest off comes
	// from one of its outermost places.
	clearest, mostMM := layout.Point{}, 0.0
	for _, place := range outermost(x, y, radiusMM, b.at) {
		if mm := b.clearanceMM(place); mm > mostMM {
			clearest, mostMM = place, mm
		}
	}
	if mostMM == 0 {
		return layout.Point{}, false
	}
	between := func(t float64) layout.Point {
		return layout.Point{XMM: middle.XMM + t*(clearest.XMM-middle.XMM), YMM: middle.YMM + t*(clearest.YMM-middle.YMM)}
	}
	hidden, passes := 0.0, 1.0
	for range 30 {
		if t := (hidden + passes) / 2; b.clear(between(t)) {
			passes = t
		} else {
			hidden = t
		}
	}
	return between(passes), true
}

// outermost is where a convex piece of the pupil, what is left of its disc between x and y, can reach
// furthest from the drop: the ends of its straight edges, and on its rim the places away from the drop's
// middle and toward it.
func outermost(x, y span, radiusMM float64, at flip.Vec) (places []layout.Point) {
	chord := func(aside float64, s span) (ends []float64) {
		half := math.Sqrt(max(0, radiusMM*radiusMM-aside*aside))
		if s = s.both(span{-half, half}); s.empty() {
			return nil
		}
		return []float64{s.from, s.to}
	}
	for _, edge := range []float64{x.from, x.to} {
		for _, end := range chord(edge, y) {
			places = append(places, layout.Point{XMM: edge, YMM: end})
		}
	}
	for _, edge := range []float64{y.from, y.to} {
		for _, end := range chord(edge, x) {
			places = append(places, layout.Point{XMM: end, YMM: edge})
		}
	}
	if out := math.Hypot(at.X, at.Y); out > 0 {
		for _, r := range []float64{radiusMM / out, -radiusMM / out} {
			if place := (layout.Point{XMM: at.X * r, YMM: at.Y * r}); x.nearest(place.XMM) == place.XMM &&
				y.nearest(place.YMM) == place.YMM {
				places = append(places, place)
			}
		}
	}
	return places
}

// throughBlur is how far, across and down in the drop's plane, the blur of a place goes that lies behindMM
// behind the drop's centre and is seen through the drop there: half of the traced spread, which lies along
// the line to the drop's middle, for a rod across it, and square to that.
func (s Shot) throughBlur(behindMM float64, through layout.Point) layout.Size {
	s.Drop.DistanceMM, s.Picture.Fill = behindMM, s.shareOfRadius(through)
	spread := s.FillSpread(s.Camera.FocusMM)
	cos, sin := 1.0, 0.0
	switch out := math.Hypot(through.XMM, through.YMM); {
	case s.Drop.Body == flip.LevelRod:
		cos, sin = 0, 1
	case !s.Drop.Body.Rod() && out > 0:
		cos, sin = through.XMM/out, through.YMM/out
	}
	half := s.Camera.PixelMM() / 2
	return layout.Size{WidthMM: half * math.Hypot(spread.TangentialPx*cos, spread.SagittalPx*sin),
		HeightMM: half * math.Hypot(spread.TangentialPx*sin, spread.SagittalPx*cos)}
}

// catches is the place of the frame nearest to a point of the drop's plane. ok is false when it lies further
// off than blur reaches, across or down.
func catches(c layout.Camera, through layout.Point, blur layout.Size) (nearest layout.Point, ok bool) {
	w, h := c.FrameWidthMM/2, c.FrameHeightMM/2
	nearest = layout.Point{XMM: max(-w, min(through.XMM, w)), YMM: max(-h, min(through.YMM, h))}
	return nearest, math.Abs(through.XMM-nearest.XMM) <= blur.WidthMM && math.Abs(through.YMM-nearest.YMM) <= blur.HeightMM
}
