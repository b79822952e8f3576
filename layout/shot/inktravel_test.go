package shot

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// Straight, the picture is in the drop just as drawn, so how near its sides come to the axis is known without
// any trace: of a square inside the fill with a tenth of it to one side, its furthest corners are sqrt(0.9² +
// 0.5²) sides off and at the fill, and its nearest side is 0.1 sides off. As soon as the drop moves toward
// that side its edge comes into view; it does not matter that the board is as wide on either side.
func TestTravelOfAPictureOnOneSide(t *testing.T) {
	for _, off := range []float64{-0.4, 0.4} {
		s := plain()
		s.Proportions, s.DistanceMM, s.Fill, s.Look, s.Fit = 1, 300, 0.85, layout.Straight, layout.Inside
		s.Framing.OffX, s.TravelMM = off, 2
		p := mustPlan(t, s)
		travel := Of(p).Travel()
		nearest := 0.85 * 0.1 / math.Hypot(0.9, 0.5)
		require.InDelta(t, nearest, travel.HeldFill, 1e-4)
		require.Zero(t, *travel.AcrossMM)
		require.Greater(t, *travel.DownMM, 1.0, "square to the side, which it runs along")
		require.Less(t, travel.Asked.Fill, nearest)
		require.False(t, travel.Asked.Holds)

		// The middle of the drop looks at the board t (D + L)/D off its middle (TestTheMiddleOfADisplacedDrop):
		// far enough that is past the near side, and no fill is free.
		near := math.Inf(1)
		for _, at := range p.PictureOutline() {
			if math.Abs(at.YMM-p.Backdrop.HeightMM/2) < 1 {
				near = min(near, math.Abs(at.XMM-p.Backdrop.WidthMM/2))
			}
		}
		require.InDelta(t, 12, near, 1, "mm of print on the near side")
		p.Drop.TravelMM = near / p.BoardPerDrop() * 1.01
		require.InDelta(t, 0, Of(p).Travel().Asked.Fill, 0.001)
		p.Drop.TravelMM = near / p.BoardPerDrop() * 0.9
		require.Greater(t, Of(p).Travel().Asked.Fill, 0.005)
	}
}

// What is said of a travel over pictures that do not fill their boards, against the exact place of every ray
// in the picture: at a fill a hair smaller all stay in what is printed, wherever in the travel's circle the
// drop is, and at one a hundredth larger some leave it.
func TestAskedTravelOverBentPictures(t *testing.T) {
	const seed = 64
	random := rand.New(rand.NewSource(seed))
	for name, s := range bentSetups() {
		if s.Drop.Body != flip.Ball {
			continue
		}
		for _, background := range []layout.Surround{"", "#203040"} {
			s.TravelMM, s.Background = 1.5, background
			p := mustPlan(t, s)
			a := Of(p).Travel().Asked
			leaves := func(fill float64, drop layout.Point, azimuth float64) bool {
				pupil := flip.Vec{X: -drop.XMM, Y: -drop.YMM, Z: -s.CameraMM}
				to := pupil.Scale(-1)
				away := math.Sqrt(to.Dot(to))
				radius := fill * away * math.Tan(math.Asin(p.Sight().Drop.RadiusMM()/away))
				sin, cos := math.Sincos(azimuth)
				square := flip.Vec{X: cos, Y: sin * p.Sight().Drop.HalfHeightMM() / p.Sight().Drop.RadiusMM(), Z: 0}
				square.Z = -(square.X*to.X + square.Y*to.Y) / to.Z
				l, ok := p.Sight().Trace(flip.Ray{From: pupil, Dir: to.Add(square.Scale(radius)).Unit()})
				return !ok || !inked(p, l.XMM+drop.XMM, l.YMM+drop.YMM)
			}
			if a.Fill > 0.02 {
				for range 60 {
					at, way := a.TravelMM*math.Sqrt(random.Float64()), 2*math.Pi*random.Float64()
					require.False(t, leaves(a.Fill*0.99, layout.Point{XMM: at * math.Cos(way), YMM: at * math.Sin(way)},
						2*math.Pi*random.Float64()),
						"seed %d, %s, %q: fill %g does not hold", seed, name, background, a.Fill)
				}
			}
			left := false
			for way := range 36 {
				sin, cos := math.Sincos(float64(way) * math.Pi / 18)
				for azimuth := range 36 {
					left = left || leaves(min(a.Fill+0.01, 0.999), layout.Point{XMM: a.TravelMM * cos, YMM: a.TravelMM * sin},
						float64(azimuth)*math.Pi/18)
				}
			}
			require.True(t, left, "seed %d, %s, %q: more than fill %g holds", seed, name, background, a.Fill)
		}
	}
}

// A picture that just fills what the drop sees lets it move nowhere; along a rod, and over a surround that
// fills the board, it may.
func TestToleratedOverBentPictures(t *testing.T) {
	for name, s := range bentSetups() {
		p := mustPlan(t, s)
		travel := Of(p).Travel()
		if s.Fit == layout.Cover && s.Look != 0.5 {
			for _, mm := range []*float64{travel.AcrossMM, travel.DownMM} {
				require.True(t, mm == nil && s.Drop.Body != flip.Ball || mm != nil && *mm < 0.02, name)
			}
		}
		s.Surround, s.SurroundSize = "#203040", layout.Size{WidthMM: p.Backdrop.WidthMM + 40,
			HeightMM: p.Backdrop.HeightMM + 40}
		if travel = Of(mustPlan(t, s)).Travel(); s.Drop.Body != flip.LevelRod {
			require.Greater(t, *travel.AcrossMM, 1.0, name)
		}
	}
}

// What would keep the fill over a bent picture does, asked for again by its figures.
func TestTravelRemediesOfBentPictures(t *testing.T) {
	prints := 0
	for _, name := range []string{"straight", "straight, inside", "turned", "round", "upright rod", "pressed flat"} {
		s := bentSetups()[name]
		s.TravelMM = 1
		travel := Of(mustPlan(t, s)).Travel()
		if travel.Asked.Holds {
			continue
		}
		if x := travel.Asked.Print; x != nil {
			prints++
			q, err := x.asked(s, func(s *layout.Setup) { s.DistanceMM, s.Print = x.DistanceMM, x.Print })
			require.NoError(t, err, name)
			require.GreaterOrEqual(t, Of(q).Travel().Asked.Fill, travel.HeldFill-heldHair, name)
		}
		if x := travel.Asked.Surround; x != nil {
			q, err := x.asked(s, func(s *layout.Setup) {
				s.DistanceMM, s.Print, s.Surround, s.SurroundSize = x.DistanceMM, x.Print, "#102030", x.Backdrop
			})
			require.NoError(t, err, name)
			require.GreaterOrEqual(t, Of(q).Travel().Asked.Fill, travel.HeldFill-1e-6, name)
		}
	}
	require.Greater(t, prints, 2)
}

// A square that stands on its corner, inside the fill, is nearest to the axis at the middles of its sides, 45 degrees
// from any way across or down. The fill that it leaves free touches them there, so no movement leaves it free: the rest
// that is given square to a movement does not reach so far.
func TestASquareOnItsCornerAllowsNoTravel(t *testing.T) {
	s := plain()
	s.Proportions, s.DistanceMM, s.Look, s.Fit, s.Framing.TurnDeg = 1, 300, layout.Straight, layout.Inside, 45
	travel := Of(mustPlan(t, s)).Travel()
	require.InDelta(t, 0.85/math.Sqrt2, travel.HeldFill, 1e-4)
	require.Less(t, *travel.AcrossMM, 0.02)
	require.Less(t, *travel.DownMM, 0.02)
}
