package layout

import (
	"math"
	"slices"

	"dropsheet/flip"
)

// MadeFor is what a print was bent for. Another camera tried on a job changes what is seen of it, not the print.
type MadeFor struct {
	CameraMM float64 `json:"camera_distance_mm"`
	// HeightOverWidth is above 0 for a drop out of round.
	HeightOverWidth float64 `json:"height_over_width,omitempty"`
	Fill            float64 `json:"fill"`          // where the print ends: what lies further out is not printed
	FlatPerDrop     float64 `json:"flat_per_drop"` // mm of the flat picture for a millimetre of the drop's plane
}

// Plain tells whether the picture is printed flat, upright and whole, its middle on the axis: a rectangle in
// even proportion.
func (p Picture) Plain() bool { return p.MadeFor == nil }

// plain tells the same of a setup.
func (s Setup) plain() bool { return s.Look == Bulged && s.Framing == Framing{} }

// bent is a picture that is not plain, on its way to paper. Places are optical mm from the axis.
type bent struct {
	bend  flip.Bend
	fill  float64
	frame frame   // of the picture as it appears in the drop, in units of heightMM
	flat  float64 // the flat picture's height in mm
	round float64 // mm of the flat picture: the radius of the circle that is printed of a round subject; 0 for any other

	tracer *flip.Tracer // of the bend's sight
	edge   flip.Outline // of the drop
}

// traced makes the bent picture ready for many rays.
func (b bent) traced() bent {
	tracer := b.bend.Sight.Tracer()
	b.tracer = &tracer
	b.edge = b.bend.Sight.Outline()
	return b
}

// bent works out how the picture of a setup is bent for a sight and a fill. ok is false when the drop sees no
// backdrop there.
//
// The flat picture and the straight one are each as large as the fit asks: on the backdrop it is met by what
// the drop sees at the fill, in the drop by the fill's own outline. The proportion of both is FlatPerDrop.
func (s Setup) bent(sight flip.Sight, fill float64) (b bent, ok bool) {
	on, okOn := seesAt(sight, fill, s.Fit)
	if !okOn {
		return bent{}, false
	}
	f := s.Framing.frame(s.Proportions)
	in := insideOutline(sight, fill)
	if s.Framing.Round { // a circle is whole in the drop as far as its shorter axis goes
		on.WidthMM = min(on.WidthMM, on.HeightMM)
		in.WidthMM = min(in.WidthMM, in.HeightMM)
		on.HeightMM, in.HeightMM = on.WidthMM, in.WidthMM
	}
	flat := f.scale(s.Fit, on)
	b = bent{bend: flip.Bend{Sight: sight, Straight: float64(s.Look), FlatPerDrop: flat / f.scale(s.Fit, in)},
		fill: fill, frame: f, flat: flat}
	if s.Framing.Round {
		b.round = f.nearest() * flat
	}
	return b.traced(), flat > 0
}

// seesAt is how far across and down the drop sees at a fill; 0 along a rod. Of a drop that hangs, which sees further by
// its lower part, it is the further where the picture covers the fill, and the nearer where it shall lie within. ok is
// false when it sees no backdrop.
func seesAt(sight flip.Sight, fill float64, fit Fit) (semi Size, ok bool) {
	across, okAcross := sight.ReachMM(fill)
	down, okDown := sight.ReachDownMM(fill)
	switch sight.Drop.Body {
	case flip.Hanging:
		up, okUp := sight.ReachUpMM(fill)
		okDown = okDown && okUp
		if (fit == Cover) == (up > down) {
			down = up
		}
	case flip.UprightRod:
		down = 0
	case flip.LevelRod:
		across = 0
	}
	return Size{across, down}, okAcross && okDown
}

// insideOutline is the outline of a fill in the drop's plane; 0 along a rod.
func insideOutline(sight flip.Sight, fill float64) Size {
	halfWidthMM, halfHeightMM := sight.OutlineMM()
	semi := Size{fill * halfWidthMM, fill * halfHeightMM}
	switch sight.Drop.Body {
	case flip.UprightRod:
		semi.HeightMM = 0
	case flip.LevelRod:
		semi.WidthMM = 0
	}
	return semi
}

// FillOutline is the outline of the plan's fill in the drop's plane, half widths from its middle; 0 along a rod.
func (p Plan) FillOutline() Size { return insideOutline(p.Sight(), p.Picture.Fill) }

// turned turns a place that appears in the drop over, as the picture hangs on the backdrop, or back.
func turned(d flip.Drop, at Point) Point {
	if d.Body != flip.LevelRod {
		at.XMM = -at.XMM
	}
	if d.Body != flip.UprightRod {
		at.YMM = -at.YMM
	}
	return at
}

// inPicture tells whether a place of the flat picture, as it hangs, is within its sides, with a hair to spare.
func (b bent) inPicture(at Point) bool {
	at = turned(b.bend.Sight.Drop, at)
	if b.round > 0 && math.Hypot(at.XMM, at.YMM) > b.round*(1+1e-12)+slack {
		return false
	}
	for i, n := range b.frame.normals {
		if at.XMM*n.XMM+at.YMM*n.YMM > b.frame.away[i]*b.flat*(1+1e-12)+slack {
			return false
		}
	}
	return true
}

// printed is the place of the backdrop that a point of the drop's plane shows; ok is false where the picture
// is not printed there: past its sides or the fill.
func (b bent) printed(throughXMM, throughYMM float64) (at Point, ok bool) {
	if b.edge.ShareAt(throughXMM, throughYMM) > b.fill*(1+1e-12) {
		return Point{}, false
	}
	l, ok := b.tracer.Trace(b.bend.Sight.PinholeRay(throughXMM, throughYMM))
	if !ok || !l.Through {
		return Point{}, false
	}
	at = Point{l.XMM, l.YMM}
	flatX, flatY := b.bend.Mix(l, throughXMM, throughYMM)
	return at, b.inPicture(Point{flatX, flatY})
}

// outlineDirections is how many directions the outline is looked for in, besides those of the picture's
// corners: a straight stretch between two of them cuts off less than a 100,000th of the radius.
const outlineDirections = 720

// OutlinePlace is a place of the outline of what is printed.
type OutlinePlace struct {
	At         Point   // on the backdrop, optical mm from the axis
	DropShare  float64 // of the drop's radius at which the camera that the print was made for sees it
	AzimuthRad float64 // in the drop's plane, from its right clockwise
}

// outline goes round the printed picture, as far as both picture and fill reach.
func (b bent) outline() []OutlinePlace { return b.outlineIn(outlineDirections, 48) }

// outlineIn does so in that many directions, each halved that many times.
func (b bent) outlineIn(directions, halvings int) []OutlinePlace {
	s := b.bend.Sight
	radiusMM := s.ApparentRadiusMM()
	azimuths := make([]float64, 0, directions+len(b.frame.corners))
	for i := range directions {
		azimuths = append(azimuths, 2*math.Pi*float64(i)/float64(directions))
	}
	furthest := b.fill * max(min(b.edge.HalfWidthMM, 1e9), radiusMM)
	for _, c := range b.frame.corners {
		at := turned(s.Drop, Point{c.XMM * b.flat, c.YMM * b.flat})
		if x, y, ok := b.bend.Through(at.XMM, at.YMM); ok {
			azimuths = append(azimuths, math.Mod(math.Atan2(y, x)+2*math.Pi, 2*math.Pi))
		}
	}
	slices.Sort(azimuths)
	// No picture reaches further out in the drop than this; along a rod it is far more than the fill.
	for _, c := range b.frame.corners {
		furthest = max(furthest, 4*math.Hypot(c.XMM, c.YMM)*b.flat/b.bend.FlatPerDrop)
	}
	furthest = min(furthest, radiusMM*1e4)
	all := make([]OutlinePlace, 0, len(azimuths))
	for _, azimuth := range azimuths {
		sin, cos := math.Sincos(azimuth)
		// The fill ends the ray at the latest; within it the picture's side may. Both are met once, from within.
		low, high := 0.0, furthest
		if share := b.edge.ShareAt(cos, sin); share > 0 {
			high = min(high, b.fill/share)
		}
		if _, ok := b.printed(high*cos, high*sin); ok {
			low = high
		}
		for range halvings {
			if middle := (low + high) / 2; middle > low && middle < high {
				if _, ok := b.printed(middle*cos, middle*sin); ok {
					low = middle
				} else {
					high = middle
				}
			}
		}
		at, ok := b.printed(low*cos, low*sin)
		if !ok {
			at = Point{} // the axis itself lies on the picture's side
		}
		all = append(all, OutlinePlace{at, b.edge.ShareAt(low*cos, low*sin), azimuth})
	}
	return all
}

// extent is the least board about the axis that holds the printed picture.
func extent(outline []OutlinePlace) (size Size) {
	for _, e := range outline {
		size.WidthMM = max(size.WidthMM, 2*math.Abs(e.At.XMM))
		size.HeightMM = max(size.HeightMM, 2*math.Abs(e.At.YMM))
	}
	return size
}

// print is the same extent, quickly: a picture that covers a ball is printed as far as the drop sees at the
// fill, and of one that lies inside the corners lie furthest out. A rod's, and a circle's, is looked for in
// few directions, straight across and down among them; so is that of a drop that hangs, which does not see as far
// both ways.
func (b bent) print(fit Fit) (size Size, ok bool) {
	s := b.bend.Sight
	if s.Drop.Body != flip.Ball || b.round > 0 {
		return extent(b.outlineIn(outlineDirections/20, 28)), true
	}
	if fit == Cover {
		semi, ok := seesAt(s, b.fill, fit)
		return Size{2 * semi.WidthMM, 2 * semi.HeightMM}, ok
	}
	var corners []OutlinePlace
	for _, c := range b.frame.corners {
		flat := turned(s.Drop, Point{c.XMM * b.flat, c.YMM * b.flat})
		x, y, ok := b.bend.Board(flat.XMM, flat.YMM)
		if !ok {
			return Size{}, false
		}
		corners = append(corners, OutlinePlace{At: Point{x, y}})
	}
	return extent(corners), true
}

// bent is the plan's own bent picture, for the camera that it was made for. The picture must not be plain.
func (p Plan) bent() bent {
	sight := p.Sight()
	made := p.Picture.MadeFor
	sight.CameraMM, sight.Drop.HeightOverWidth = made.CameraMM, made.HeightOverWidth
	b := bent{
		bend:  flip.Bend{Sight: sight, Straight: float64(p.Picture.Look), FlatPerDrop: made.FlatPerDrop},
		fill:  made.Fill,
		frame: p.Picture.Framing.frame(p.Picture.FlatWidthMM / p.Picture.FlatHeightMM),
		flat:  p.Picture.FlatHeightMM,
	}
	if p.Picture.Framing.Round {
		b.round = b.frame.nearest() * b.flat
	}
	return b.traced()
}
