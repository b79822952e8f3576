package shot

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// offAxis follows the ray at a fill through a drop that is t off the axis, in the plane of pupil, drop and
// board's middle, by the closed form: in the drop's own frame, turned by the angle theta of its line of
// sight, the ray leaves at phi with impact parameter b (van de Hulst, Light Scattering by Small Particles,
// 1957, 12.21), and any line with these meets the board's plane at L tan(theta + phi) + b / cos(theta + phi)
// from the drop's foot. It returns the place from the board's middle. Fill below 0 is the side that faces the
// axis.
func offAxis(s flip.Sight, t, fill float64) float64 {
	theta := math.Atan(t / s.CameraMM)
	away := math.Hypot(t, s.CameraMM)
	a := math.Atan(math.Abs(fill) * math.Tan(math.Asin(s.Drop.RadiusMM()/away)))
	b := away * math.Sin(a)
	i := math.Asin(b / s.Drop.RadiusMM())
	phi := a - 2*(i-math.Asin(b/s.Drop.RadiusMM()/s.Drop.Index))
	if fill < 0 {
		phi, b = -phi, -b
	}
	return t + s.DistanceMM*math.Tan(theta+phi) + b/math.Cos(theta+phi)
}

// Through the middle of a drop that is t off the axis one looks at the board t (D + L)/D off its middle: by
// vectors, with the pupil moved the other way.
func TestTheMiddleOfADisplacedDrop(t *testing.T) {
	p := mustPlan(t, wide())
	for _, mm := range []float64{0.5, 3, 20} {
		pupil := flip.Vec{X: -mm, Y: 0, Z: -p.Drop.CameraMM}
		l, ok := p.Sight().Trace(flip.Ray{From: pupil, Dir: pupil.Scale(-1).Unit()})
		require.True(t, ok && l.Through)
		require.InDelta(t, mm*p.BoardPerDrop(), l.XMM+mm, 1e-9)
		require.InDelta(t, mm*p.BoardPerDrop(), offAxis(p.Sight(), mm, 0), 1e-9)
	}
}

// The traced extents of a displaced drop against the closed form, for a ball and for rods across their axis.
func TestSeesRoundAgainstTheClosedForm(t *testing.T) {
	for _, body := range []flip.Body{flip.Ball, flip.UprightRod, flip.LevelRod} {
		s := wide()
		s.Drop.Body = body
		p := mustPlan(t, s)
		for _, mm := range []float64{0, 1, 4, 25} {
			for _, fill := range []float64{0.3, 0.85, 0.95} {
				want := max(math.Abs(offAxis(p.Sight(), mm, fill)), math.Abs(offAxis(p.Sight(), mm, -fill)))
				if body != flip.LevelRod {
					got, ok := Of(p).seesRound(fill, layout.Point{XMM: mm})
					require.True(t, ok)
					require.InDelta(t, want, got.WidthMM, 1e-6*want, "%v, %g mm, fill %g", body, mm, fill)
				}
				if body != flip.UprightRod {
					got, ok := Of(p).seesRound(fill, layout.Point{YMM: mm})
					require.True(t, ok)
					require.InDelta(t, want, got.HeightMM, 1e-6*want, "%v, %g mm, fill %g", body, mm, fill)
				}
			}
		}
	}
}

// A picture that covers the fill allows no travel along its shorter side, and along the longer one as much as
// the closed form says.
func TestToleratedTravel(t *testing.T) {
	for _, c := range []struct {
		name        string
		proportions float64
		fit         layout.Fit
		across      bool // free to move across
		down        bool
	}{
		{"wide, cover", 1.5, layout.Cover, true, false},
		{"high, cover", 0.6, layout.Cover, false, true},
		{"square, cover", 1, layout.Cover, false, false},
		{"wide, inside: the rim starts at the shorter side", 1.5, layout.Inside, true, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := wide()
			s.Proportions, s.Fit = c.proportions, c.fit
			p := mustPlan(t, s)
			travel := Of(p).Travel()
			require.Nil(t, travel.Asked)
			for _, way := range []struct {
				free    bool
				mm      *float64
				boardMM float64
			}{{c.across, travel.AcrossMM, p.Backdrop.WidthMM}, {c.down, travel.DownMM, p.Backdrop.HeightMM}} {
				require.NotNil(t, way.mm)
				if !way.free {
					require.Zero(t, *way.mm)
					continue
				}
				require.Greater(t, *way.mm, 1.0)
				at := max(math.Abs(offAxis(p.Sight(), *way.mm, travel.HeldFill)),
					math.Abs(offAxis(p.Sight(), *way.mm, -travel.HeldFill)))
				require.InDelta(t, way.boardMM/2, at, 1e-4)
			}
		})
	}
}

func TestARodMayMoveAlongItself(t *testing.T) {
	s := wide()
	s.Drop.Body, s.TravelMM = flip.UprightRod, 2
	s.Surround, s.SurroundSize = layout.Stretch, layout.Size{WidthMM: 1500, HeightMM: 1200}
	travel := Of(mustPlan(t, s)).Travel()
	require.Nil(t, travel.DownMM)
	require.Greater(t, *travel.AcrossMM, 2.0)
	require.True(t, travel.Asked.Holds)
	s.Drop.Body = flip.LevelRod
	travel = Of(mustPlan(t, s)).Travel()
	require.Nil(t, travel.AcrossMM)
	require.Greater(t, *travel.DownMM, 2.0)
}

// What is said of a travel that was asked for, on wild setups: rays at random round the fill that is said to
// hold stay on the board wherever in the travel's circle the drop is, and at a fill a hundredth larger some
// leave it at one of its four ends.
func TestAskedTravelHoldsAllRound(t *testing.T) {
	const seed = 63
	random := rand.New(rand.NewSource(seed))
	for i := range 40 {
		s := wide()
		s.Proportions = 0.6 + 1.5*random.Float64()
		s.DistanceMM, s.Fill, s.TravelMM = 100+500*random.Float64(), 0.5+0.4*random.Float64(), 0.5+8*random.Float64()
		p := mustPlan(t, s)
		a := Of(p).Travel().Asked
		leaves := func(fill float64, drop layout.Point, azimuth float64) bool {
			pupil := flip.Vec{X: -drop.XMM, Y: -drop.YMM, Z: -s.CameraMM}
			to := pupil.Scale(-1)
			away := math.Sqrt(to.Dot(to))
			radius := fill * away * math.Tan(math.Asin(s.Drop.RadiusMM()/away))
			// Any direction square to the line of sight, by Gram and Schmidt.
			square := flip.Vec{X: math.Cos(azimuth), Y: math.Sin(azimuth), Z: 0}
			square = square.Sub(to.Scale(square.Dot(to) / to.Dot(to))).Unit()
			l, ok := p.Sight().Trace(flip.Ray{From: pupil, Dir: to.Add(square.Scale(radius)).Unit()})
			return !ok || math.Abs(l.XMM+drop.XMM) > p.Backdrop.WidthMM/2+1e-3 ||
				math.Abs(l.YMM+drop.YMM) > p.Backdrop.HeightMM/2+1e-3
		}
		for range 200 {
			at, way := a.TravelMM*math.Sqrt(random.Float64()), 2*math.Pi*random.Float64()
			drop := layout.Point{XMM: at * math.Cos(way), YMM: at * math.Sin(way)}
			require.False(t, leaves(a.Fill*(1-1e-4), drop, 2*math.Pi*random.Float64()), "seed %d, case %d", seed, i)
		}
		left := false
		for _, drop := range []layout.Point{{XMM: a.TravelMM}, {XMM: -a.TravelMM}, {YMM: a.TravelMM}, {YMM: -a.TravelMM}} {
			for azimuth := range 8 {
				left = left || leaves(min(a.Fill+0.01, 0.999), drop, float64(azimuth)*math.Pi/4)
			}
		}
		require.True(t, left, "seed %d, case %d: more than fill %g holds over %g mm", seed, i, a.Fill, a.TravelMM)
	}
}

// What would keep the fill does: the print, asked for again by its figures, and the surround.
func TestTravelRemedies(t *testing.T) {
	prints := 0
	for _, mm := range []float64{1, 3, 8} {
		for _, fit := range []layout.Fit{layout.Cover, layout.Inside} {
			s := wide()
			s.Fit, s.TravelMM = fit, mm
			p := mustPlan(t, s)
			travel := Of(p).Travel()
			require.False(t, travel.Asked.Holds)
			require.Less(t, travel.Asked.Fill, travel.HeldFill)
			held := func(q layout.Plan) float64 { return Of(q).Travel().Asked.Fill }

			x := travel.Asked.Print
			require.NotNil(t, x)
			prints++
			q, err := x.asked(s, func(s *layout.Setup) { s.DistanceMM, s.Print = x.DistanceMM, x.Print })
			require.NoError(t, err)
			require.InDelta(t, travel.HeldFill, held(q), 0.001)
			require.GreaterOrEqual(t, held(q), travel.HeldFill-1e-6)

			x = travel.Asked.Surround
			require.NotNil(t, x)
			q, err = x.asked(s, func(s *layout.Setup) {
				s.DistanceMM, s.Print, s.Surround, s.SurroundSize = x.DistanceMM, x.Print, "#102030", x.Backdrop
			})
			require.NoError(t, err)
			require.True(t, held(q) >= travel.HeldFill-1e-6)
		}
	}
	require.Positive(t, prints)
}

func TestTravelRefused(t *testing.T) {
	for _, mm := range []float64{-1, math.NaN(), math.Inf(1), 1e4} {
		s := wide()
		s.TravelMM = mm
		_, err := s.Plan()
		require.ErrorContains(t, err, "travel")
	}
}

// On a board a little larger than what the drop sees at the fill, it may move by that little, seen from the pupil, and
// that is told down to a thousandth of a millimetre. The rim's own place moves a little more than the middle does.
func TestSmallTravelIsTold(t *testing.T) {
	s := wide()
	print := mustPlan(t, s).Picture.Print()
	for _, mm := range []float64{0.1, 0.01} {
		s.Surround = "#203040"
		s.SurroundSize = layout.Size{WidthMM: print.WidthMM + 2*mm, HeightMM: print.HeightMM + 2*mm}
		p := mustPlan(t, s)
		down := *Of(p).Travel().DownMM
		require.Positive(t, down)
		require.InDelta(t, p.Backdrop.HeightMM/2, math.Abs(offAxis(p.Sight(), down, -p.Picture.Fill)), 1e-4)
	}
}
