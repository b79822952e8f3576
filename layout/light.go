package layout

import "math"

// Light is the light on the printed side, prepared once by Plan.Light and safe for use by many goroutines.
//
// Each lamp is a small flat emitter that shines by Lambert's cosine law and is aimed at the backdrop's
// centre; all give the same light. A lamp d away gives E ~ cos(at the lamp) cos(at the board) / d², angles
// taken to either normal, so that one lamp on the axis falls off by the fourth power of the cosine (Smith,
// Modern Optical Engineering, 8.6; recalled from memory). Light thrown about by the room is not counted.
type Light struct {
	centre    Point  // of the backdrop, in board mm: lamps are placed from it
	lamps     []Lamp // none: even
	picture   Rect   // on the board
	brightest lit    // its brightest place
}

// Light prepares the light of the plan's lamps.
func (p Plan) Light() Light { return p.lightOf(p.Lamps) }

// lightOf prepares the light of other lamps on the same board.
func (p Plan) lightOf(lamps []Lamp) Light {
	l := Light{centre: Point{p.Backdrop.WidthMM / 2, p.Backdrop.HeightMM / 2}, lamps: lamps, picture: p.PictureOnBoard()}
	if len(lamps) > 0 {
		l.brightest = l.extreme(1)
	}
	return l
}

// Brightest is the picture's brightest place, in board mm. There must be lamps.
func (l Light) Brightest() Point { return l.brightest.at }

// Darkest is the picture's darkest place, likewise.
func (l Light) Darkest() Point { return l.extreme(-1).at }

// darkestShare is the light at the darkest place, of that at the brightest.
func (l Light) darkestShare() float64 { return l.extreme(-1).sum / l.brightest.sum }

// FalloffStops is how far the picture's darkest place lies below its brightest, in stops: 0 to NoLightStops.
func (l Light) FalloffStops() float64 { return stopsBelow(l.darkestShare()) }

// At is the light that falls on a place of the board's plane, in board mm: 0 for none, 1 for that at the
// picture's brightest place. It passes 1 only beyond the picture. Without lamps it is 1 everywhere.
func (l Light) At(xMM, yMM float64) float64 {
	if len(l.lamps) == 0 {
		return 1
	}
	return l.sum(xMM, yMM) / l.brightest.sum
}

// sum adds the lamps' light up at a place in board mm, in units of the lamps' own strength over mm².
func (l Light) sum(xMM, yMM float64) float64 {
	sum := 0.0
	for _, lamp := range l.lamps {
		sum += lamp.On(xMM-l.centre.XMM, yMM-l.centre.YMM)
	}
	return sum
}

// On is one lamp's light at a place of the board's plane, in mm from the backdrop's centre: in units of the lamp's
// own strength over mm². With the place
// at P, the lamp at S and d = |P - S|: cos(at the lamp) = (|S|² - P.S) / (|S| d) and cos(at the board) = z /
// d. A place behind the lamp gets none.
//
// Products are wrapped so that no processor fuses them with a sum: levelled sheets come out the same everywhere.
func (s Lamp) On(xMM, yMM float64) float64 {
	dx, dy := xMM-s.XMM, yMM-s.YMM
	z2 := float64(s.ZMM * s.ZMM)
	away := float64(dx*dx) + float64(dy*dy) + z2
	far := float64(s.XMM*s.XMM) + float64(s.YMM*s.YMM) + z2
	toward := far - float64(xMM*s.XMM) - float64(yMM*s.YMM)
	if toward <= 0 {
		return 0
	}
	return toward / math.Sqrt(far) * s.ZMM / (away * away)
}

// StopsAt is how far below the picture's brightest place the light at a place of the board's plane lies, in
// stops: 0 to NoLightStops.
func (l Light) StopsAt(xMM, yMM float64) float64 { return stopsBelow(l.At(xMM, yMM)) }
