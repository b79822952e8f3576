package motion_test

import (
	"math"
	"testing"

	"dropsheet/flip/motion"

	"github.com/stretchr/testify/require"
)

// By hand, with g = 9.80665 m/s².
func TestSpeed(t *testing.T) {
	for _, c := range []struct {
		name         string
		fallMM, want float64 // mm, mm/s
	}{
		{"let go just now", 0, 0},
		{"20 cm: the root of 2 x 9806.65 x 200", 200, 1980.57},
		{"a metre: the root of 19.6133", 1000, 4428.69},
		{"in one second it falls g/2", 9806.65 / 2, 9806.65},
		{"not above", -5, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.InDelta(t, c.want, motion.SpeedMMPerS(c.fallMM), 0.01)
			require.InDelta(t, max(0, c.fallMM), motion.FallMM(-c.want), 0.01)
		})
	}
}

func TestCovers(t *testing.T) {
	for _, c := range []struct {
		name                            string
		speedMMPerS, timeS, want, delta float64
	}{
		{"20 cm of fall, 1/25000 s", 1980.57, 1.0 / 25000, 0.0792, 1e-4},
		{"rising as fast", -1980.57, 1.0 / 25000, 0.0792, 1e-4},
		{"no time", 1980.57, 0, 0, 0},
		// In 0.1 s it falls g/2 0.1² = 49.03 mm, and in the 0.1 s before it rose as far.
		{"at rest in the middle", 0, 0.2, 49.03, 0.01},
		// At the middle 490.33 mm/s, half of what 0.1 s of fall gives: from -490.33 it rises 12.26 mm, stops after
		// 0.05 s and falls for 0.15 s, 110.32 mm.
		{"turns round on the way", 490.33, 0.2, 110.32, 0.01},
		{"just not", 980.67, 0.2, 196.13, 0.01},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.InDelta(t, c.want, motion.CoversMM(c.speedMMPerS, c.timeS), c.delta)
			require.InDelta(t, c.timeS, motion.TimeS(c.speedMMPerS, c.want), 1e-3*c.timeS)
		})
	}
}

func TestInView(t *testing.T) {
	for _, c := range []struct {
		name                        string
		speedMMPerS, heightMM       float64
		wantS, delta, framesASecond float64
	}{
		// 213 frames at 12,500 a second for 33.75 mm about 20 cm of fall: 2062.43 less 1895.17 mm/s, over g, is 17.06 ms.
		{"20 cm of fall", 1980.57, 33.75, 213.2, 0.1, 12500},
		{"rising as fast", -1980.57, 33.75, 213.2, 0.1, 12500},
		// Let go 10 mm above the middle of a frame 40 mm high, it falls 30 mm: the root of 2 x 30 / 9806.65 s.
		{"let go inside the frame", math.Sqrt(2 * 9806.65 * 10), 40, 0.078219, 1e-6, 1},
		{"let go at the upper edge", math.Sqrt(2 * 9806.65 * 20), 40, 0.090320, 1e-6, 1},
		// It turns 10 mm above the middle: 30 mm up and 30 mm down.
		{"turns inside the frame", -math.Sqrt(2 * 9806.65 * 10), 40, 0.156439, 1e-6, 1},
		{"a frame of next to nothing", 10, 1e-9, 1e-10, 1e-14, 1},
		{"as fast as makes no difference", 1e9, 1, 1e-9, 1e-18, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.InDelta(t, c.wantS, motion.InViewS(c.speedMMPerS, c.heightMM)*c.framesASecond, c.delta)
		})
	}
}

// A drop followed in small steps from the frame's middle, on and back in time, leaves the frame as late and came into
// it as early.
func TestInViewAgainstSteps(t *testing.T) {
	const stepS, heightMM = 1e-6, 20.0
	until := func(speedMMPerS, stepS float64) (tookS float64) {
		for y := 0.0; math.Abs(y) < heightMM/2; y += speedMMPerS * stepS {
			speedMMPerS += 9806.65 * stepS
			tookS += math.Abs(stepS)
		}
		return tookS
	}
	for _, speedMMPerS := range []float64{1980.57, 700, -300, -700, -1980.57} { // at -300 it turns inside
		want := until(speedMMPerS, stepS) + until(speedMMPerS, -stepS)
		require.InDelta(t, want, motion.InViewS(speedMMPerS, heightMM), 1e-5, "%g", speedMMPerS)
	}
}
