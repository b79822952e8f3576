package proof

import (
	"math"

	"dropsheet/flip/motion"
	"dropsheet/layout"
)

// Motion is how drops move while a frame is exposed, all alike. Board and camera stand still.
type Motion struct {
	SpeedMMPerS float64 // in the exposure's middle, down; below 0 rising
	ExposureS   float64 // 0: they stand still
}

// sweep is how far below its place a drop is while the frame is exposed.
type sweep struct{ fromMM, toMM float64 }

func (s sweep) mm() float64 { return s.toMM - s.fromMM }

func (m Motion) sweep() sweep {
	before, after := m.fallsMM(-0.5), m.fallsMM(0.5)
	s := sweep{min(before, after, 0), max(before, after, 0)}
	if turnS := -m.SpeedMMPerS / motion.GravityMMPerS2; math.Abs(turnS) < m.ExposureS/2 { // it comes to rest meanwhile
		s.fromMM = min(s.fromMM, motion.PlaceMM(m.SpeedMMPerS, turnS))
	}
	return s
}

// fallsMM is how far below its place a drop is at a time, in exposures from the middle of one.
func (m Motion) fallsMM(time float64) float64 { return motion.PlaceMM(m.SpeedMMPerS, time*m.ExposureS) }

// place gives rays, which look at what lies so far from the pupil, their times and the drops' places then.
func (m Motion) place(l *lens, rays []aim, awayMM float64) {
	l.spreadTimes(rays, awayMM)
	for k := range rays {
		rays[k].fallsMM = m.fallsMM(rays[k].time)
	}
}

// moves tells whether the drops do.
func (v *view) moves() bool { return v.sweep.mm() > 0 }

// met is where the drop is that a ray of a pixel may meet. The pixel looks at a point of the drops' plane and is
// nearest to a drop in the exposure's middle; at the ray's time it may be nearest to another.
func (v *view) met(at, drop layout.Point, a *aim) layout.Point {
	if a.fallsMM == 0 {
		return drop
	}
	if len(v.drops) > 1 {
		drop = v.nearest(layout.Point{XMM: at.XMM, YMM: at.YMM - a.fallsMM})
	}
	drop.YMM += a.fallsMM
	return drop
}

// fromEdgesMM are the least and the most that fromEdgeMM comes to while the frame is exposed: the least of any drop,
// the most of the one that is nearest in the exposure's middle.
func (v *view) fromEdgesMM(p, nearest layout.Point) (leastMM, mostMM float64) {
	if !v.moves() {
		mm := v.fromEdgeMM(p, nearest)
		return mm, mm
	}
	fallen := func(drop layout.Point, mm float64) float64 {
		return v.fromEdgeMM(p, layout.Point{XMM: drop.XMM, YMM: drop.YMM + mm})
	}
	leastMM = math.Inf(1)
	for _, drop := range v.drops {
		leastMM = min(leastMM, fallen(drop, max(v.sweep.fromMM, min(p.YMM-drop.YMM, v.sweep.toMM))))
	}
	return leastMM, max(fallen(nearest, v.sweep.fromMM), fallen(nearest, v.sweep.toMM))
}
