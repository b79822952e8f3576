package shot

import (
	"math"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
)

// PixelsPerFramePixel is how many pixels of a print must fall on the length of a frame pixel so that the
// frame loses nothing to the print: by the sampling theorem the frame's own pixels hold detail down to two
// pixels of theirs, and a print of as many would just carry it; twice that leaves room for a grid that lies
// askew to the frame's (common practice, no source).
const PixelsPerFramePixel = 2.0

// DefaultPPI is the finest print unless another is asked for: what home printers show of a photograph (common
// practice, no source).
const DefaultPPI = 300

// Resolution is what the frame can show of the picture in the drop, and so what print and artwork are needed.
type Resolution struct {
	// AcrossPx is how many frame pixels the printed picture spans in the drop, within its fill and the frame,
	// down likewise.
	AcrossPx float64 `json:"across_px"`
	DownPx   float64 `json:"down_px"`
	// CentreMM and RimMM are the millimetres of board that fall on the length of a frame pixel, in the
	// direction that has fewer, or across a rod: in the middle of the drop and at the fill. The others are
	// those along a rod; 0 for a ball.
	CentreMM      float64 `json:"board_mm_on_a_frame_pixel_centre"`
	RimMM         float64 `json:"board_mm_on_a_frame_pixel_rim"`
	CentreAlongMM float64 `json:"board_mm_on_a_frame_pixel_centre_along,omitempty"`
	RimAlongMM    float64 `json:"board_mm_on_a_frame_pixel_rim_along,omitempty"`
	// NeededPPI is the print resolution that the frame can use, PixelsPerFramePixel where it sees the print
	// largest. Of a rod it is what serves across it. Along it the backdrop is seen as it is, not made smaller,
	// and far out of focus: there not pixels are the bound but a blur of many of them, which a print that
	// serves across is finer than.
	NeededPPI float64 `json:"needed_ppi"`
	// The picture's pixels, after any crop, that give one to each frame pixel everywhere; of a rod across it,
	// for the same reason.
	NeededWidthPx  int `json:"needed_artwork_width_px"`
	NeededHeightPx int `json:"needed_artwork_height_px"`

	centre, rim onPixel
	body        flip.Body
}

// onPixel is what falls on a frame pixel, across and down: millimetres of board and shares of the picture.
type onPixel struct{ board, picture [2]layout.Point }

// fewest is the length of what falls on the length of a frame pixel, in the direction that has least; across
// a rod, whatever falls along it.
func fewest(on [2]layout.Point, body flip.Body) float64 {
	switch body {
	case flip.UprightRod:
		return length(on[0].XMM, on[0].YMM)
	case flip.LevelRod:
		return length(on[1].XMM, on[1].YMM)
	}
	return least2(on[0], on[1])
}

// alongRod is the same along a rod; 0 for a ball.
func alongRod(on [2]layout.Point, body flip.Body) float64 {
	switch body {
	case flip.UprightRod:
		return length(on[1].XMM, on[1].YMM)
	case flip.LevelRod:
		return length(on[0].XMM, on[0].YMM)
	}
	return 0
}

// rimShare is how far out toward the fill the rim is looked at.
const rimShare = 0.98

// Resolution works the figures out.
func (s Shot) Resolution() Resolution {
	spans := s.spans()
	r := Resolution{AcrossPx: spans.WidthMM / s.Camera.PixelMM(), DownPx: spans.HeightMM / s.Camera.PixelMM(),
		body: s.Drop.Body}
	r.centre, r.rim = s.onPixel(layout.Point{}), s.onPixel(s.rimPoint())
	r.CentreMM, r.RimMM = fewest(r.centre.board, r.body), fewest(r.rim.board, r.body)
	r.CentreAlongMM, r.RimAlongMM = alongRod(r.centre.board, r.body), alongRod(r.rim.board, r.body)
	r.NeededPPI = math.Ceil(units.PerMM(PixelsPerFramePixel / min(r.CentreMM, r.RimMM)).PixelsPerInch())
	// An artwork of a thousand pixels to the picture's height tells how many are needed.
	const tried = 1000
	proportions := s.Picture.FlatWidthMM / s.Picture.FlatHeightMM
	centre, rim := r.ArtworkPx(tried*proportions, tried)
	if least := min(centre, rim); least > 0 {
		r.NeededWidthPx, r.NeededHeightPx = int(math.Ceil(tried*proportions/least)), int(math.Ceil(tried/least))
	}
	return r
}

// spans is the extent, in the drop's plane, of the printed picture as it is seen, as far as it comes into the frame.
func (s Shot) spans() layout.Size {
	halfWidthMM, halfHeightMM := s.Camera.FrameWidthMM/2, s.Camera.FrameHeightMM/2
	if s.Picture.Plain() {
		// A bulged rectangle is widest in its middle.
		rim := s.FillOutline()
		if rim.WidthMM > 0 {
			halfWidthMM = min(halfWidthMM, rim.WidthMM)
		}
		if rim.HeightMM > 0 {
			halfHeightMM = min(halfHeightMM, rim.HeightMM)
		}
		// or it is out of sight
		if right, ok := s.seenThrough(s.Drop.DistanceMM, layout.Point{XMM: s.Picture.WidthMM / 2}); ok {
			halfWidthMM = min(halfWidthMM, math.Abs(right.XMM))
		}
		if bottom, ok := s.seenThrough(s.Drop.DistanceMM, layout.Point{YMM: s.Picture.HeightMM / 2}); ok {
			halfHeightMM = min(halfHeightMM, math.Abs(bottom.YMM))
		}
		return layout.Size{WidthMM: 2 * halfWidthMM, HeightMM: 2 * halfHeightMM}
	}
	var from, to layout.Point // the picture goes round the axis, or has it on its side
	for _, e := range s.BentOutline() {
		if at, ok := s.seenThrough(s.Drop.DistanceMM, e.At); ok {
			from.XMM, to.XMM = max(min(from.XMM, at.XMM), -halfWidthMM), min(max(to.XMM, at.XMM), halfWidthMM)
			from.YMM, to.YMM = max(min(from.YMM, at.YMM), -halfHeightMM), min(max(to.YMM, at.YMM), halfHeightMM)
		}
	}
	return layout.Size{WidthMM: to.XMM - from.XMM, HeightMM: to.YMM - from.YMM}
}

// rimPoint is the point of the drop's plane where the picture's rim is looked at: across, or of a bent
// picture where it comes furthest out.
func (s Shot) rimPoint() layout.Point {
	sight := s.Sight()
	out := rimShare * s.Picture.Fill * sight.ApparentRadiusMM()
	if s.Drop.Body == flip.LevelRod {
		return layout.Point{YMM: out}
	}
	if s.Picture.Plain() || s.Drop.Body == flip.UprightRod {
		return layout.Point{XMM: out}
	}
	through, ok := s.seenThrough(s.Drop.DistanceMM, s.OutermostPlace().At)
	if !ok {
		return layout.Point{}
	}
	return layout.Point{XMM: rimShare * through.XMM, YMM: rimShare * through.YMM}
}

// ArtworkPx is how many of the artwork's pixels fall on the length of a frame pixel, in the direction that
// has fewer or across a rod, in the middle of the drop and at the fill. The artwork, as far as it is used,
// has that many pixels.
func (r Resolution) ArtworkPx(widthPx, heightPx float64) (centre, rim float64) {
	on := func(o onPixel) float64 {
		pixels := func(p layout.Point) layout.Point { return layout.Point{XMM: p.XMM * widthPx, YMM: p.YMM * heightPx} }
		return fewest([2]layout.Point{pixels(o.picture[0]), pixels(o.picture[1])}, r.body)
	}
	return on(r.centre), on(r.rim)
}

// onPixel is what falls on the frame pixel that looks through a point of the drop's plane, by tracing its neighbours.
func (s Shot) onPixel(at layout.Point) (o onPixel) {
	sight, pixelMM := s.Sight(), s.Camera.PixelMM()
	const small = 1e-3 // of the drop's radius: the drop bends nothing over so little
	step := small * sight.Drop.RadiusMM()
	lands := func(x, y float64) layout.Point {
		l, _ := sight.Trace(sight.PinholeRay(x, y))
		return layout.Point{XMM: l.XMM, YMM: l.YMM}
	}
	middle := layout.Point{XMM: s.Backdrop.WidthMM / 2, YMM: s.Backdrop.HeightMM / 2}
	shows := func(on layout.Point) layout.Point {
		u, v, _ := s.PictureAt(layout.Point{XMM: on.XMM + middle.XMM, YMM: on.YMM + middle.YMM})
		return layout.Point{XMM: u, YMM: v}
	}
	perPixel := pixelMM / step
	from := lands(at.XMM, at.YMM)
	shown := shows(from)
	for i, to := range [2]layout.Point{lands(at.XMM-step, at.YMM), lands(at.XMM, at.YMM-step)} {
		near := shows(to)
		o.board[i] = layout.Point{XMM: (to.XMM - from.XMM) * perPixel, YMM: (to.YMM - from.YMM) * perPixel}
		o.picture[i] = layout.Point{XMM: (near.XMM - shown.XMM) * perPixel, YMM: (near.YMM - shown.YMM) * perPixel}
	}
	return o
}

// length is what math.Hypot gives, in fewer steps; figures here are never so large that it matters.
func length(x, y float64) float64 { return math.Sqrt(x*x + y*y) }

// least2 is the smaller singular value of the matrix of two columns: how long the shortest of all vectors is
// that a vector of length 1 becomes.
func least2(a, b layout.Point) float64 {
	// Both singular values from half the sum and difference of the matrix and its rotation by a quarter turn.
	sum := math.Hypot(a.XMM+b.YMM, a.YMM-b.XMM)
	difference := math.Hypot(a.XMM-b.YMM, a.YMM+b.XMM)
	return math.Abs(sum-difference) / 2
}
