package motion_test

import (
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/flip/motion"

	"github.com/stretchr/testify/require"
)

func liquid(t *testing.T, name string) flip.Liquid {
	t.Helper()
	m, ok := flip.MaterialByName(name)
	require.True(t, ok, name)
	return m.Liquid
}

// By hand. Water, R = 1 mm: the root of 0.58192 / 9.982e-7 is 763.5 radians a second, 121.5 Hz; 1e-6 / (5 x 1.0034e-6)
// is 0.1993 s. R = 2.5 mm: the root of 8 x 0.07274 / (998.2 x 1.5625e-8), or of 37310, is 193.2 radians a second,
// 30.74 Hz; R²/5nu is 6.25e-6 / (5 x 1.0034e-6) = 1.2457 s. Ethanol, R = 1 mm: the root of 0.17912 / 7.893e-7, 476.4
// a second or 75.82 Hz; 1e-6 / (5 x 1.5241e-6) = 0.13122 s. Syrup of 60 %, R = 2.5 mm: the root of 0.6168 / 2.01e-5,
// 175.2 a second or 27.88 Hz; 6.25e-6 / (5 x 4.5466e-5) = 0.027493 s.
func TestSwing(t *testing.T) {
	for _, c := range []struct {
		name                  string
		liquid                string
		diameterMM, hz, ringS float64
	}{
		{"5 mm of water", "water", 5, 30.74, 1.2457},
		{"2 mm of ethanol", "ethanol", 2, 75.82, 0.13122},
		{"5 mm of thick syrup", "syrup-60", 5, 27.88, 0.027493},
		{"2 mm of water", "water", 2, 121.5, 0.19931},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := motion.Drop{DiameterMM: c.diameterMM, Liquid: liquid(t, c.liquid)}
			hz, ok := d.SwingHz()
			require.True(t, ok)
			require.InEpsilon(t, c.hz, hz, 5e-4)
			ringS, ok := d.RingS()
			require.True(t, ok)
			require.InEpsilon(t, c.ringS, ringS, 5e-4)
		})
	}
}

// Glycerol, R = 2.5 mm: the root of 0.5072 / 1.9705e-5 is 160.4 a second, and 160.4 x 6.25e-6 / 1.1577e-3 = 0.87.
func TestNoSwing(t *testing.T) {
	for _, d := range []motion.Drop{{DiameterMM: 5, Liquid: liquid(t, "glycerol")}, {DiameterMM: 5}} {
		_, ok := d.SwingHz()
		require.False(t, ok)
		_, ok = d.RingS()
		require.False(t, ok)
	}
}

// Rayleigh 1878 (from memory): drops of 1.89 jets, 4.51 jets apart.
func TestJetTrain(t *testing.T) {
	for _, name := range []string{"water", "sea-water", "ethanol"} {
		for _, jetMM := range []float64{0.1, 1, 2.5} {
			train, err := motion.JetTrain(jetMM, liquid(t, name))
			require.NoError(t, err)
			require.InEpsilon(t, 1.89, train.DropMM/jetMM, 1e-3)
			require.InEpsilon(t, 4.51, train.SpacingMM/jetMM, 1e-3)
			require.InEpsilon(t, math.Pi*jetMM*jetMM/4*train.SpacingMM, math.Pi*math.Pow(train.DropMM, 3)/6, 1e-9,
				"as much liquid as in the jet")
		}
	}
}

func TestJetTrainRefuses(t *testing.T) {
	for _, c := range []struct {
		name, liquid, says string
		jetMM              float64
	}{
		{"no jet", "water", "a jet of 0mm can't be\nhint: give a diameter above 0mm", 0},
		{"not a number", "water", "a jet of NaNmm can't be", math.NaN()},
		{"too viscous", "glycerol", "so viscous falls apart late", 1},
		{"too viscous for so fine a jet", "syrup-40", "so viscous falls apart late", 0.05},
		{"not a liquid", "acrylic", "take a liquid that has a name", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			train, err := motion.JetTrain(c.jetMM, liquid(t, c.liquid))
			require.ErrorContains(t, err, c.says)
			require.Zero(t, train)
		})
	}
}

// Water off a nozzle of 3 mm by hand: r²rho g / (2 pi sigma) = 2.25e-6 x 998.2 x 9.807 / 0.45704 = 0.04819 is
// x³psi, and x = 0.4143 with psi between 0.6828 at 0.40 and 0.6669 at 0.45 does that: 0.07111 x 0.6783 =
// 0.04823. V is (1.5/0.4143)³ = 47.5 mm³, a ball of 4.49 mm.
func TestNozzleDrop(t *testing.T) {
	for _, c := range []struct {
		name, liquid     string
		nozzleMM, dropMM float64
	}{
		{"3 mm, water", "water", 3, 4.493},
		// On a line of the table each: V is 2 pi r sigma psi / (rho g) and (r/x)³, so r² is 2 pi sigma psi x³ / (rho g).
		// Water, x = 0.5: 4.6688e-5 x 0.6515 x 0.125 = 3.8022e-6, r 1.9499 mm, V (3.8998)³ = 59.31 mm³, 4.838 mm.
		{"3.90 mm, water", "water", 3.8998, 4.838},
		// x = 1: 4.6688e-5 x 0.6098 = 2.8470e-5, r 5.3358 mm, V 151.9 mm³, 6.620 mm.
		{"10.67 mm, water", "water", 10.6716, 6.620},
		// Ethanol, x = 0.5: 2 pi 0.02239 / (789.3 x 9.80665) = 1.8175e-5, x 0.6515 x 0.125 = 1.4801e-6, r 1.2166 mm, V
		// (2.4332)³ = 14.406 mm³, 3.019 mm.
		{"2.43 mm, ethanol", "ethanol", 2.4332, 3.019},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := motion.NozzleDropMM(c.nozzleMM, liquid(t, c.liquid))
			require.NoError(t, err)
			require.InDelta(t, c.dropMM, got, 0.002)
		})
	}
}

// Lando and Oakley, Journal of Colloid and Interface Science 25, 526 (1967), fit Harkins and Brown's table by
// 1/(2 pi psi) = 0.14782 + 0.27896 x - 0.166 x² from 0.3 to 1.2 (from memory). Whatever a nozzle gives obeys
// Tate's law with it.
func TestNozzleDropAgainstAFit(t *testing.T) {
	water := liquid(t, "water")
	for nozzleMM := 1.95; nozzleMM < 14.4; nozzleMM += 0.25 {
		dropMM, err := motion.NozzleDropMM(nozzleMM, water)
		require.NoError(t, err, "%g mm", nozzleMM)
		volumeMM3, radiusMM := math.Pi*math.Pow(dropMM, 3)/6, nozzleMM/2
		x := radiusMM / math.Cbrt(volumeMM3)
		fit := 1 / (2 * math.Pi * (0.14782 + 0.27896*x - 0.166*x*x))
		weightN := water.DensityKgPerM3 * volumeMM3 * 1e-9 * 9.80665
		rimN := 2 * math.Pi * radiusMM * 1e-3 * water.TensionNPerM
		require.InEpsilon(t, fit, weightN/rimN, 0.015, "%g mm, x %g", nozzleMM, x)
	}
}

func TestNozzleDropRefuses(t *testing.T) {
	for _, c := range []struct {
		name, liquid, says string
		nozzleMM           float64
	}{
		// 0.3³ x 0.7256 x 4.6688e-5 is 9.147e-7, r 0.9564 mm; 1.2³ x 0.6535 x 4.6688e-5 is 5.2722e-5, r 7.261 mm.
		{"too fine", "water", "outer diameters of 1.91 to 14.5mm", 1.91},
		{"too wide", "water", "outer diameters of 1.91 to 14.5mm", 14.6},
		{"none", "water", "a nozzle of 0mm can't be", 0},
		{"not a number", "water", "a nozzle of NaNmm can't be", math.NaN()},
		{"not a liquid", "crown-glass", "take a liquid that has a name", 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := motion.NozzleDropMM(c.nozzleMM, liquid(t, c.liquid))
			require.ErrorContains(t, err, c.says)
			require.Zero(t, got)
		})
	}
	got, err := motion.NozzleDropMM(1.92, liquid(t, "water"))
	require.NoError(t, err)
	require.Positive(t, got)
}
