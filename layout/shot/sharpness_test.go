package shot

import (
	"encoding/json"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// At equal framing the focal length does not change the sharpness between the drop's edge and the picture in
// it; a wider framing does.
func TestFramingCountsNotTheLens(t *testing.T) {
	at := func(cameraMM, frameMM float64) layout.Plan {
		s := plain()
		s.DistanceMM, s.CameraMM, s.Camera.LensMM, s.Camera.FrameWidthMM = 400, cameraMM, 0, frameMM
		return mustPlan(t, s)
	}
	near := at(300, 72)
	for _, cameraMM := range []float64{150, 600, 1200, 3000} {
		p := at(cameraMM, 72)
		require.Greater(t, math.Abs(math.Log(p.Camera.LensMM/near.Camera.LensMM)), math.Log(1.9), "another lens")
		for _, fNumber := range []float64{4, 8, 16, 32} {
			require.InEpsilon(t, Of(near).worstAt(fNumber), Of(p).worstAt(fNumber), 0.03, "camera at %g, f/%g", cameraMM,
				fNumber)
			require.InEpsilon(t, near.BlurAt(fNumber, near.EdgeMM()).Centre.LargerPx(),
				p.BlurAt(fNumber, p.EdgeMM()).Centre.LargerPx(), 0.04, "camera at %g, f/%g", cameraMM, fNumber)
		}
		require.InEpsilon(t, Of(near).Sharpness().Least.BlurPx, Of(p).Sharpness().Least.BlurPx, 0.02, "camera at %g",
			cameraMM)
	}
	wide := at(300, 144)
	require.Less(t, Of(wide).worstAt(16), 0.8*Of(near).worstAt(16))
	require.InEpsilon(t, Of(near).Sharpness().Least.BlurPx/2, Of(wide).Sharpness().Least.BlurPx, 0.01,
		"the least blur is a length at the drop")
}

// The best that any stop does, by hand: a disc g/N and an Airy disc aN add up to no less than sqrt(2ga), and
// with the disc of a point halfway between focus and either end of the gap that is, at the drop, sqrt(4.88
// lambda gap/2): no camera does better.
func TestLeastBlurByHand(t *testing.T) {
	p := bodied(t, flip.Ball, 16)
	gapMM := p.EdgeMM() - p.ImageMM()
	require.InEpsilon(t, math.Sqrt(4.88*550e-6*gapMM/2), Of(p).Sharpness().Least.AtDropMM, 0.015,
		"aside from what second order adds")
}

// Stops that hold do, and their neighbours don't; where none holds, none on a comb does, and the wider frame
// that is offered does, but no narrower one.
func TestStopsThatHold(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	for _, c := range []struct {
		name     string
		sharpTo  float64
		from, to bool // ends inside the stops looked at
	}{
		{"closely", 7, true, true},
		{"with room", 12, true, true},
		{"by all that are closed", 22, true, false},
		{"by all", 80, false, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := s
			s.Camera.SharpToPx = c.sharpTo
			p := mustPlan(t, s)
			got := Of(p).Sharpness()
			require.NotNil(t, got.Holds)
			require.Nil(t, got.Wider)
			require.LessOrEqual(t, Of(p).worstAt(got.Holds.FromFNumber), c.sharpTo)
			require.LessOrEqual(t, Of(p).worstAt(got.Holds.ToFNumber), c.sharpTo)
			require.Equal(t, c.from, got.Holds.FromFNumber > 1)
			require.Equal(t, c.to, got.Holds.ToFNumber < 64)
			if c.from {
				require.Greater(t, Of(p).worstAt(got.Holds.FromFNumber*0.999), c.sharpTo)
			}
			if c.to {
				require.Greater(t, Of(p).worstAt(got.Holds.ToFNumber*1.001), c.sharpTo)
			}
		})
	}
	t.Run("by none", func(t *testing.T) {
		for _, body := range bodies {
			s := s
			s.Drop.Body = body
			p := mustPlan(t, s)
			got := Of(p).Sharpness()
			require.Equal(t, layout.DefaultSharpToPx, got.SharpToPx, "the usual figure")
			require.Nil(t, got.Holds)
			for n := 1.0; n <= 64; n *= 1.02 {
				require.GreaterOrEqual(t, Of(p).worstAt(n), got.Least.BlurPx*(1-1e-4), "f/%g", n)
			}
			s.Camera.LensMM, s.Camera.FrameWidthMM = 0, got.Wider.FrameWidthMM
			wider := mustPlan(t, s)
			holds := Of(wider).Sharpness().Holds
			require.NotNil(t, holds)
			require.True(t, holds.FromFNumber <= got.Wider.FNumber && got.Wider.FNumber <= holds.ToFNumber)
			require.InEpsilon(t, 2*wider.Sight().ApparentRadiusMM()/wider.Camera.PixelMM(), got.Wider.DropPx, 1e-9)
			s.Camera.FrameWidthMM *= 0.998
			require.Nil(t, Of(mustPlan(t, s)).Sharpness().Holds)
		}
	})
}

// Halving the frame rate gains one stop, 12,500 to 6,250; full stops' marks are rounded (common practice, no source).
func TestExposureAndFrameRate(t *testing.T) {
	for _, c := range []struct {
		from, to, stops float64
	}{{16, 11, 1}, {16, 22, -1}, {16, 8, 2}, {11, 8, 1}, {5.6, 4, 1}, {45, 64, -1}, {16, 16, 0}} {
		require.InDelta(t, c.stops, ExposureStops(c.from, c.to), 1e-9, "f/%g to f/%g", c.from, c.to)
	}
	require.InDelta(t, 2.0/3, ExposureStops(20, 16), 0.03, "f/20 is two thirds of a stop from f/16")

	s := plain()
	s.Camera.FNumber, s.Camera.FrameRate = 11, 12500
	p := mustPlan(t, s)
	rates := map[string]float64{}
	for _, stop := range Of(p).Sharpness().Stops {
		rates[StopMark(stop.FNumber)] = stop.FrameRate
		require.Equal(t, stop.FNumber == 11, stop.Current)
	}
	require.Len(t, rates, 9, "the plan's own stop stands for the full stop that it marks")
	for mark, rate := range map[string]float64{"f/11": 12500, "f/16": 6250, "f/8": 25000, "f/64": 390.625} {
		require.InEpsilon(t, rate, rates[mark], 1e-9, mark)
	}
	s.Camera.FNumber = 13
	stops := Of(mustPlan(t, s)).Sharpness().Stops
	require.Len(t, stops, 10)
	require.True(t, stops[4].Current && stops[4].FNumber == 13, "between f/11 and f/16")
}

// Between full stops a lens's marks are what they say: f/12 is a sixth of a stop from 11.31, more than marks
// are rounded by, and f/11 a twelfth.
func TestWhichMarksAreFullStops(t *testing.T) {
	for _, c := range []struct{ mark, means float64 }{{11, math.Sqrt(128)}, {12, 12}, {7.6, 7.6}, {5.6, math.Sqrt(32)}} {
		require.InDelta(t, 2*math.Log2(32/c.means), ExposureStops(32, c.mark), 1e-12, "f/%g", c.mark)
	}
}

// Lamps pulse with both half waves of the mains: 100 and 120 times a second on 50 and 60 Hz.
func TestMains(t *testing.T) {
	s := plain()
	require.Empty(t, Of(mustPlan(t, s)).Sharpness().Mains, "no frame rate is known")
	s.Camera.FrameRate = 12500
	require.Equal(t, []Mains{{50, 125}, {60, 12500.0 / 120}}, Of(mustPlan(t, s)).Sharpness().Mains)
}

func TestStopMarks(t *testing.T) {
	for mark, n := range map[string]float64{
		"f/1": 1, "f/1.4": math.Sqrt2, "f/2.8": math.Sqrt(8), "f/4": 4, "f/5.6": math.Sqrt(32), "f/11": math.Sqrt(128),
		"f/22": math.Sqrt(512),
		"f/45": math.Sqrt(2048), "f/64": 64, "f/90": math.Sqrt(8192), "f/13": 13, "f/6.3": 6.3, "f/14.6": 14.576,
		"f/20": 19.96,
	} {
		require.Equal(t, mark, StopMark(n))
	}
	require.Equal(t, "f/11", StopMark(11))
	for _, c := range []struct{ r, want [2]float64 }{{[2]float64{9.77, 21.7}, [2]float64{9.8, 21}},
		{[2]float64{9.99, 64}, [2]float64{10, 64}}, {[2]float64{14.3, 14.6}, [2]float64{14.3, 14.6}}} {
		from, to := StopRange{c.r[0], c.r[1]}.Marks()
		require.Equal(t, StopMark(c.want[0]), from)
		require.Equal(t, StopMark(c.want[1]), to)
	}
}

// Whatever can be set up has a table of finite figures, none below the Airy disc.
func TestSharpnessOfAnySetup(t *testing.T) {
	const seed = 3
	random := rand.New(rand.NewSource(seed))
	between := func(low, high float64) float64 { return low * math.Pow(high/low, random.Float64()) }
	made := 0
	for i := range 90 {
		s := plain()
		s.Drop = flip.Drop{Body: bodies[i%3], DiameterMM: between(0.5, 100), Index: 1 + between(0.01, 3)}
		s.CameraMM, s.DistanceMM, s.Fill = between(2, 5000), between(1, 5000), 1-between(1e-12, 0.99)
		s.Camera.LensMM, s.Camera.FrameWidthMM = 0, between(0.1, 2000)
		s.Camera.FNumber, s.Camera.FrameRate, s.Camera.SharpToPx = between(0.5, 1000), between(1, 1e6), between(0.01, 1000)
		s.MaxSheets = 10_000
		p, err := s.Plan()
		if err != nil {
			continue
		}
		made++
		got := Of(p).Sharpness()
		text, err := json.Marshal(got)
		require.NoError(t, err, "seed %d, setup %d: %+v", seed, i, s)
		require.NoError(t, json.Unmarshal(text, &Sharpness{}))
		require.Positive(t, p.Camera.FocusMM, "seed %d, setup %d", seed, i)
		for _, stop := range got.Stops {
			p.Camera.FNumber = stop.FNumber
			for _, f := range []Focused{stop.Edge, stop.Picture, stop.Best} {
				for _, px := range []float64{f.Blur.EdgePx, f.Blur.BackdropPx, f.Blur.Centre.TangentialPx,
					f.Blur.Centre.SagittalPx, f.Blur.Fill.TangentialPx, f.Blur.Fill.SagittalPx} {
					require.GreaterOrEqual(t, px, p.Camera.AiryPx(), "seed %d, setup %d: %+v", seed, i, s)
				}
			}
		}
	}
	require.Greater(t, made, 20)
}
