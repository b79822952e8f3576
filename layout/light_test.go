package layout

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// litPlan is the usual plan, 40 cm off, with lamps.
func litPlan(t *testing.T, lamps ...Lamp) Plan {
	t.Helper()
	s := plain()
	s.DistanceMM, s.Lamps = 400, lamps
	return mustPlan(t, s)
}

// lampAt is a lamp of which nothing but its place is known.
func lampAt(xMM, yMM, zMM float64) Lamp { return Lamp{XMM: xMM, YMM: yMM, ZMM: zMM} }

// shone is a lone lamp's light at a place, in mm from the backdrop's centre, with the drop 40 cm before that.
func shone(l Lamp, xMM, yMM float64) float64 { return l.emitter(l.LuxAt1M, 400).on(xMM, yMM) }

// One lamp on the axis: the cosine-fourth law (Smith, Modern Optical Engineering, 8.6; recalled from memory).
// At 30 degrees it gives 9/16, at 45 a quarter, at 60 a sixteenth.
func TestOnAxisLampFallsByTheFourthPowerOfTheCosine(t *testing.T) {
	const z = 700.0
	p := litPlan(t, Lamp{ZMM: z})
	l := p.Light()
	cx, cy := p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2
	for _, c := range []struct{ degrees, want float64 }{{0, 1}, {30, 9.0 / 16}, {45, 0.25}, {60, 1.0 / 16}} {
		r := z * math.Tan(c.degrees*math.Pi/180)
		for _, turn := range []float64{0, 0.7, 2, 4} {
			require.InDelta(t, c.want, l.At(cx+r*math.Cos(turn), cy+r*math.Sin(turn)), 1e-12, "%g degrees", c.degrees)
		}
	}
	brightest := l.Brightest()
	require.InDelta(t, cx, brightest.XMM, 1e-3)
	require.InDelta(t, cy, brightest.YMM, 1e-3)
	corner := math.Cos(math.Atan(math.Hypot(cx, cy) / z))
	require.InDelta(t, -4*math.Log2(corner), l.FalloffStops(), 1e-12)
}

// Lambert's law and the inverse square by vectors, for lamps anywhere.
func TestLightAgainstVectors(t *testing.T) {
	const seed = 41
	random := rand.New(rand.NewSource(seed))
	for range 500 {
		lamp := lampAt(2000*(random.Float64()-0.5), 2000*(random.Float64()-0.5), 1+2000*random.Float64())
		x, y := 1500*(random.Float64()-0.5), 1500*(random.Float64()-0.5)
		s, q := flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: lamp.ZMM}, flip.Vec{X: x, Y: y}
		ray, aim := q.Sub(s), s.Scale(-1).Unit()
		want := 0.0
		if cosLamp := ray.Unit().Dot(aim); cosLamp > 0 {
			want = cosLamp * ray.Unit().Dot(flip.Vec{Z: -1}) / ray.Dot(ray)
		}
		require.InDelta(t, want, shone(lamp, x, y), 1e-12*(1+want), "seed %d lamp %+v at %g, %g", seed, lamp, x, y)
	}
}

func TestLampsAddAndFollowTheInverseSquare(t *testing.T) {
	a, b := lampAt(-600, -400, 900), lampAt(700, 100, 800)
	p := litPlan(t, a, b)
	for _, at := range []Point{{0, 0}, {100, 250}, {600, 30}} {
		require.InEpsilon(t, p.lightOf([]Lamp{a}).Amount(at.XMM, at.YMM)+p.lightOf([]Lamp{b}).Amount(at.XMM, at.YMM),
			p.Light().Amount(at.XMM, at.YMM), 1e-12)
	}
	require.InEpsilon(t, 4*shone(lampAt(2*a.XMM, 2*a.YMM, 2*a.ZMM), 0, 0), shone(a, 0, 0), 1e-12,
		"at twice the distance, a quarter")
	require.Equal(t, 1.0, litPlan(t).Light().At(12, 34), "without lamps it is even")
}

// The search against every place of a fine lattice.
func TestBrightestAndDarkestAgainstAllPlaces(t *testing.T) {
	const seed = 42
	random := rand.New(rand.NewSource(seed))
	for n := range 60 {
		lamps := make([]Lamp, 1+random.Intn(4))
		for i := range lamps {
			lamps[i] = lampAt(2400*(random.Float64()-0.5), 2000*(random.Float64()-0.5),
				math.Pow(10, 0.5+3*random.Float64()))
		}
		p := litPlan(t, lamps...)
		l, r := p.Light(), p.PictureOnBoard()
		darkest := l.darkestShare()
		for j := range 301 {
			for i := range 301 {
				share := l.At(r.XMM+r.WidthMM*float64(i)/300, r.YMM+r.HeightMM*float64(j)/300)
				require.False(t, math.IsNaN(share) || share < darkest-1e-9 ||
					share > 1+1e-9, "seed %d case %d: %g outside %g to 1", seed, n, share, darkest)
			}
		}
	}
}

func TestLevel(t *testing.T) {
	s := plain()
	s.DistanceMM, s.Lamps, s.Level = 400, []Lamp{lampAt(-600, -400, 900), lampAt(100, 700, 1500)}, true
	p := mustPlan(t, s)
	require.NoError(t, p.Check())
	l, light := p.Level(), p.Light()
	darkest := light.Darkest()
	require.True(t, l.On())
	require.InDelta(t, light.FalloffStops(), l.LossStops(), 1e-12)
	require.InDelta(t, light.StopsAt(darkest.XMM, darkest.YMM), l.LossStops(), 1e-12)
	require.InDelta(t, 1, l.Gain(darkest.XMM, darkest.YMM), 1e-12, "the darkest place prints as it is")
	const seed = 43
	random := rand.New(rand.NewSource(seed))
	for range 1000 {
		x, y := p.Backdrop.WidthMM*random.Float64(), p.Backdrop.HeightMM*random.Float64()
		require.LessOrEqual(t, l.Gain(x, y), 1.0)
		require.InEpsilon(t, light.At(darkest.XMM, darkest.YMM), l.Gain(x, y)*light.At(x, y), 1e-6,
			"seed %d: even all over", seed)
	}
	require.Equal(t, 1.0, l.Gain(-3000, p.Backdrop.HeightMM/2), "far beyond the picture nothing is left to take away")

	moved, err := p.WithCamera(p.Camera.AsSetup(), p.Drop.CameraMM, []Lamp{{ZMM: 500}})
	require.NoError(t, err)
	require.Equal(t, l.Gain(30, 40), moved.Level().Gain(30, 40), "the print stays as printed when other lamps are tried")

	plainPlan := litPlan(t, s.Lamps...)
	require.False(t, plainPlan.Level().On())
	require.Equal(t, 1.0, plainPlan.Level().Gain(30, 40))
	require.Zero(t, plainPlan.Level().LossStops())
}

// A lamp on the axis z off loses -4 log2 cos(atan(r/z)) stops at a corner r off it (the cosine-fourth law),
// so the z for a loss is r / tan(acos(2^(-loss/4))): just under six stops are printed away, and just over are
// not.
func TestLevelMakesUpForSixStops(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	picture := mustPlan(t, s).Picture
	r := math.Hypot(picture.WidthMM, picture.HeightMM) / 2
	for _, c := range []struct {
		stops float64
		ok    bool
	}{{5.9, true}, {6.1, false}} {
		z := r / math.Tan(math.Acos(math.Exp2(-c.stops/4)))
		s.Lamps, s.Level = []Lamp{{ZMM: z}}, true
		p, err := s.Plan()
		if !c.ok {
			require.ErrorContains(t, err, "fall off by 6.1 stops")
			continue
		}
		require.NoError(t, err)
		require.InDelta(t, c.stops, p.Level().LossStops(), 1e-9)
	}
}

func TestLevelRefuses(t *testing.T) {
	for _, c := range []struct {
		name  string
		lamps []Lamp
		says  string
	}{
		{"no lamps", nil, "say so with --lamp"},
		{"a part without light", []Lamp{lampAt(200, 0, 10)}, "without light"},
		{"too much", []Lamp{{ZMM: 120}}, "fall off by"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			s.DistanceMM, s.Lamps, s.Level = 400, c.lamps, true
			_, err := s.Plan()
			require.ErrorContains(t, err, c.says)
		})
	}
	p := litPlan(t)
	p.LevelledFor = []Lamp{{ZMM: -1}}
	require.Error(t, p.Check(), "a job that was spoiled")
	p.LevelledFor = []Lamp{{ZMM: math.NaN()}}
	require.Error(t, p.Check())
	p.LevelledFor = slices.Repeat([]Lamp{{ZMM: 900}}, 1000)
	require.ErrorContains(t, p.Check(), "at most")
}
