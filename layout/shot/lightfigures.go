package shot

import (
	"math"
	"slices"

	"dropsheet/layout"
)

// evenStops is the fall-off over the picture that is not seen as such (common practice, no source).
const evenStops = 0.5

// LightFigures is how the lamps light the picture.
type LightFigures struct {
	// from its brightest place to its darkest; NoLightStops where no light falls
	FalloffStops float64  `json:"falloff_stops"`
	Brightest    LitPlace `json:"brightest"`
	Darkest      LitPlace `json:"darkest"`
	Centre       LitPlace `json:"centre"`
	// of the picture on the board as it hangs: top left, top right, bottom left, bottom right
	Corners []LitPlace `json:"corners"`
	Retreat *Retreat   `json:"under_half_a_stop,omitempty"` // none where even a kilometre is not enough
	// the fall-off if every lamp had a twin on the other side of the axis
	TwinStops float64    `json:"falloff_with_twins_stops"`
	Glares    []Glare    `json:"glare"`
	InView    []Sighting `json:"lamps_in_view"`
	Facing    Facing     `json:"cut_edges"`
}

// LitPlace is a place of the board and its light.
type LitPlace struct {
	Board layout.Point `json:"board_mm"`
	Share float64      `json:"share"` // of the light at the picture's brightest place
	Stops float64      `json:"stops"` // below it; NoLightStops for no light
}

// Retreat is how far back the lamps must go, each straight away from the backdrop's centre, for a fall-off
// under half a stop.
type Retreat struct {
	Factor float64       `json:"factor"` // of each lamp's distance from the backdrop's centre; 1 where they may stay
	Lamps  []layout.Lamp `json:"lamps_mm"`
	// LossStops is of light at the centre, in stops: below 0 that gets more, where the lamps do not point at it.
	LossStops float64 `json:"loss_stops"`
}

// LightFigures works out what the plan's lamps do; nil without lamps, when the board is lit evenly.
func (s Shot) LightFigures() *LightFigures {
	if len(s.Lamps) == 0 {
		return nil
	}
	l, picture := s.Light(), s.PictureOnBoard()
	at := func(q layout.Point) LitPlace { return LitPlace{q, l.At(q.XMM, q.YMM), l.StopsAt(q.XMM, q.YMM)} }
	centre := layout.Point{XMM: s.Backdrop.WidthMM / 2, YMM: s.Backdrop.HeightMM / 2}
	left, top, right, bottom := picture.XMM, picture.YMM, picture.RightMM(), picture.BottomMM()
	f := &LightFigures{
		Brightest: at(l.Brightest()), Darkest: at(l.Darkest()), Centre: at(centre),
		Corners: []LitPlace{at(layout.Point{XMM: left, YMM: top}), at(layout.Point{XMM: right, YMM: top}),
			at(layout.Point{XMM: left, YMM: bottom}), at(layout.Point{XMM: right, YMM: bottom})},
		Retreat: s.retreat(), TwinStops: s.falloffStops(withTwins(s.Lamps)), Glares: s.glares(),
		InView: s.lampsInView(), Facing: s.facing(),
	}
	f.FalloffStops = f.Darkest.Stops
	return f
}

// falloffStops is the fall-off that other lamps would have over the picture.
func (s Shot) falloffStops(lamps []layout.Lamp) float64 {
	s.Lamps = lamps
	return s.Light().FalloffStops()
}

// withTwins adds a lamp for each, as far on the other side of the axis.
func withTwins(lamps []layout.Lamp) []layout.Lamp {
	both := slices.Clone(lamps)
	for _, l := range lamps {
		l.XMM, l.YMM, l.Aim.XMM, l.Aim.YMM = -l.XMM, -l.YMM, -l.Aim.XMM, -l.Aim.YMM
		both = append(both, l)
	}
	return both
}

// moved is the lamps so many times as far from the backdrop's centre, each straight away from it. What they are aimed
// at stays.
func moved(lamps []layout.Lamp, factor float64) []layout.Lamp {
	lamps = slices.Clone(lamps)
	for i := range lamps {
		lamps[i].XMM *= factor
		lamps[i].YMM *= factor
		lamps[i].ZMM *= factor
	}
	return lamps
}

// retreat finds how far back the lamps must go; nil where even a kilometre is not enough. Far lamps light the
// board evenly whatever their directions, so some distance does; nearer ones need not get better step by
// step, and the first distance found by doubling is refined.
func (s Shot) retreat() *Retreat {
	falloff := func(factor float64) float64 { return s.falloffStops(moved(s.Lamps, factor)) }
	enough := 1.0
	for falloff(enough) > evenStops {
		enough *= 2
		if layout.CheckLamps(moved(s.Lamps, enough)) != nil {
			return nil
		}
	}
	if enough > 1 {
		for short := enough / 2; enough-short > 1e-4*enough; {
			if middle := (short + enough) / 2; falloff(middle) > evenStops {
				short = middle
			} else {
				enough = middle
			}
		}
	}
	lamps := moved(s.Lamps, enough)
	return &Retreat{enough, lamps, max(-layout.NoLightStops, math.Log2(s.onCentre(s.Lamps)/s.onCentre(lamps)))}
}

// onCentre is what lamps give at the backdrop's centre, as Light.Amount has it.
func (s Shot) onCentre(lamps []layout.Lamp) float64 {
	s.Lamps = lamps
	return s.Light().Amount(s.Backdrop.WidthMM/2, s.Backdrop.HeightMM/2)
}
