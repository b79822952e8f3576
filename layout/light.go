package layout

import "math"

// Light is the light on the printed side, prepared once by Plan.Light and safe for use by many goroutines.
//
// Each lamp is a small flat emitter that shines by Lambert's cosine law and is aimed at the backdrop's
// centre; all give the same light. A lamp d away gives E ~ cos(at the lamp) cos(at the board) / d², angles
// taken to either normal, so that one lamp on the axis falls off by the fourth power of the cosine (Smith,
// Modern Optical Engineering, 8.6; recalled from memory). Light thrown about by the room is not counted.
type Light struct {
	centre    Point   // of the backdrop, in board mm: lamps are placed from it
	lamps     []Lamp  // none: even
	brightest float64 // what sum gives at the brightest place of the picture
}

// Light prepares the light of the plan's lamps.
func (p Plan) Light() Light { return p.lightOf(p.Lamps) }

// lightOf prepares the light of other lamps on the same board.
func (p Plan) lightOf(lamps []Lamp) Light {
	l := Light{Point{p.Backdrop.WidthMM / 2, p.Backdrop.HeightMM / 2}, lamps, 1}
	if len(lamps) > 0 {
		l.brightest = l.extreme(p.PictureOnBoard(), 1).sum
	}
	return l
}

// At is the light that falls on a place of the board's plane, in board mm: 0 for none, 1 for that at the
// picture's brightest place. It passes 1 only beyond the picture. Without lamps it is 1 everywhere.
func (l Light) At(xMM, yMM float64) float64 {
	if len(l.lamps) == 0 {
		return 1
	}
	return l.sum(xMM, yMM) / l.brightest
}

// sum adds the lamps' light up at a place in board mm, in units of the lamps' own strength over mm².
func (l Light) sum(xMM, yMM float64) float64 {
	sum := 0.0
	for _, lamp := range l.lamps {
		sum += lamp.on(xMM-l.centre.XMM, yMM-l.centre.YMM)
	}
	return sum
}

// on is one lamp's light at a place of the board's plane, counted from the backdrop's centre. With the place
// at P, the lamp at S and d = |P - S|: cos(at the lamp) = (|S|² - P.S) / (|S| d) and cos(at the board) = z /
// d. A place behind the lamp gets none.
//
// Products are wrapped so that no processor fuses them with a sum: levelled sheets come out the same everywhere.
func (s Lamp) on(xMM, yMM float64) float64 {
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
