package seamsight

import (
	"cmp"
	"math"
	"slices"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// Seam is one seam of the plan, looked at along its length.
type Seam struct {
	layout.Seam
	Samples []Sample // in the order of the board, from FromMM to ToMM
}

// Sample is a piece of a seam, and how each path shows it.
type Sample struct {
	FromMM, ToMM float64 // along the board's other axis
	Sightings    [2]Sighting
}

// MiddleMM is the place where the piece was looked at.
func (s Sample) MiddleMM() float64 { return (s.FromMM + s.ToMM) / 2 }

// Verdict is the worse of both paths.
func (s Sample) Verdict() Verdict {
	return max(s.Sightings[Direct].Verdict, s.Sightings[Through].Verdict)
}

// Verdict is that of the seam where it shows most, on the plainer of both paths.
func (s Seam) Verdict() (worst Verdict) {
	for _, sample := range s.Samples {
		worst = max(worst, sample.Verdict())
	}
	return worst
}

// Place is a place of the seam, in board mm.
func (s Seam) Place(alongMM float64) layout.Point {
	if s.Axis == "x" {
		return layout.Point{XMM: s.AtMM, YMM: alongMM}
	}
	return layout.Point{XMM: alongMM, YMM: s.AtMM}
}

// Worst is the sample that a path shows most plainly; ok is false when it shows none.
func (s Seam) Worst(path Path) (worst Sample, ok bool) {
	over := 0.0
	for _, sample := range s.Samples {
		if s := sample.Sightings[path]; s.Verdict != OutOfSight && (!ok || s.OverThreshold() > over) {
			worst, over, ok = sample, s.OverThreshold(), true
		}
	}
	return worst, ok
}

// LengthMM is how much of the seam a path shows with a verdict.
func (s Seam) LengthMM(path Path, v Verdict) (mm float64) {
	for _, sample := range s.Samples {
		if sample.Sightings[path].Verdict == v {
			mm += sample.ToMM - sample.FromMM
		}
	}
	return mm
}

// Pieces are a seam's length in mm, cut finer toward the axis, where the drop shows the board largest: a
// fifty-fifth of the way to the axis, within these bounds.
const (
	shortestMM   = 0.5
	longestMM    = 4.0
	shareOfWayMM = 1.0 / 55
)

// Seams looks at all the plan's seams, in the plan's order.
func (m *Model) Seams() []Seam {
	out := make([]Seam, len(m.plan.Seams))
	texture.Rows(len(out), func(i int) { out[i] = m.seam(m.plan.Seams[i]) })
	return out
}

func (m *Model) seam(on layout.Seam) Seam {
	s := Seam{Seam: on}
	middle := layout.Point{XMM: m.plan.Backdrop.WidthMM / 2, YMM: m.plan.Backdrop.HeightMM / 2}
	for from := on.FromMM; from < on.ToMM; {
		at := s.Place(from)
		away := math.Hypot(at.XMM-middle.XMM, at.YMM-middle.YMM)
		to := min(from+max(shortestMM, min(away*shareOfWayMM, longestMM)), on.ToMM)
		if on.ToMM-to < shortestMM/2 {
			to = on.ToMM
		}
		sample := Sample{FromMM: from, ToMM: to}
		at = s.Place(sample.MiddleMM())
		for path := range sample.Sightings {
			sample.Sightings[path] = m.At(at.XMM, at.YMM, on.Axis, Path(path))
		}
		s.Samples = append(s.Samples, sample)
		from = to
	}
	return s
}

// Ranked is one path's view of a seam, where it shows most.
type Ranked struct {
	Seam   Seam
	Path   Path
	Sample Sample
}

// Sighting is how the path shows that place.
func (r Ranked) Sighting() Sighting { return r.Sample.Sightings[r.Path] }

// WorstFirst lists each path's view of each seam that is in sight, the one furthest over its threshold first.
func WorstFirst(seams []Seam) []Ranked {
	var all []Ranked
	for _, s := range seams {
		for path := range pathNames {
			if worst, ok := s.Worst(Path(path)); ok {
				all = append(all, Ranked{s, Path(path), worst})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Ranked) int {
		return cmp.Compare(b.Sighting().OverThreshold(), a.Sighting().OverThreshold())
	})
	return all
}
