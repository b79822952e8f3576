package layout

import (
	"encoding/json"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// Half of the beam to a side, a lamp gives half its light; the board there lies askew and further off besides, which
// takes the cube of the cosine. Without a beam it is Lambert's, 120 degrees.
func TestHalfTheLightAtHalfTheBeam(t *testing.T) {
	const z = 900.0
	for _, beamDeg := range []float64{0, 5, 30, 60, 119.9, 120, 150} {
		half := beamDeg / 2 * math.Pi / 180
		if beamDeg == 0 {
			half = math.Pi / 3
		}
		p := litPlan(t, Lamp{ZMM: z, BeamDeg: beamDeg})
		cx, cy := p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2
		r, cos := z*math.Tan(half), math.Cos(half)
		for _, turn := range []float64{0, 0.7, 2, 4} {
			require.InEpsilon(t, 0.5*cos*cos*cos, p.Light().At(cx+r*math.Cos(turn), cy+r*math.Sin(turn)), 1e-9,
				"a beam of %g degrees", beamDeg)
		}
	}
}

// A beam of 60 degrees by hand: half at 30 degrees is cos^k with k = ln 2 / -ln cos 30 = 4.8188, so at 45 degrees it
// gives 0.18823 of its light, and the board gets a quarter root of two of that, 0.35355.
func TestBeamByHand(t *testing.T) {
	p := litPlan(t, Lamp{ZMM: 300, BeamDeg: 60})
	require.InDelta(t, 0.18823*0.35355, p.Light().At(p.Backdrop.WidthMM/2+300, p.Backdrop.HeightMM/2), 1e-5)
}

func TestLux(t *testing.T) {
	for _, c := range []struct {
		name  string
		lamps []Lamp
		want  float64 // in the board's middle, by hand
	}{
		{"straight on, a metre off", []Lamp{{ZMM: 1000, LuxAt1M: 10000}}, 10000},
		{"half a metre off, a beam makes no difference", []Lamp{{ZMM: 500, LuxAt1M: 10000, BeamDeg: 20}}, 40000},
		// |S|² is 1.33 m², its cosine to the board 900/1153.256: 10000 / 1.33 x 0.78040 = 5867.7.
		{"from the side", []Lamp{{XMM: -600, YMM: -400, ZMM: 900, LuxAt1M: 10000}}, 5867.7},
		{"two, unlike", []Lamp{{ZMM: 1000, LuxAt1M: 10000}, {ZMM: 2000, LuxAt1M: 1000}}, 10250},
		// Aimed 1 m to the right from 1 m before the middle, it sees that 45 degrees aside: Lambert leaves 0.70711.
		{"aimed beside", []Lamp{{ZMM: 1000, LuxAt1M: 10000, Aim: Aim{XMM: 1000}}}, 7071.1},
		// With a beam of 90 degrees it is half, whatever the law.
		{"aimed beside, with a beam", []Lamp{{ZMM: 1000, LuxAt1M: 10000, BeamDeg: 90, Aim: Aim{YMM: -1000}}}, 5000},
		// From (300, 0, 800) to the drop at 400 it looks along (-3, 0, -4)/5, to the middle along (-3, 0, -8)/8.544: the
		// cosine is 41/42.72, the middle's own 8/8.544, and |S|² 0.73 m²: 10000 x 0.95974 x 0.93633 / 0.73 = 12310.0.
		{"aimed at the drop", []Lamp{{XMM: 300, ZMM: 800, LuxAt1M: 10000, Aim: Aim{AtDrop: true}}}, 12310.0},
		{"turned away: between drop and board, aimed at the drop", []Lamp{{ZMM: 100, LuxAt1M: 10000, Aim: Aim{AtDrop: true}}},
			0},
		{"in the drop's place and aimed there", []Lamp{{ZMM: 400, LuxAt1M: 10000, Aim: Aim{AtDrop: true}}}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := litPlan(t, c.lamps...)
			got, ok := p.Light().Lux(p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2)
			require.True(t, ok)
			require.InDelta(t, c.want, got, 0.1)
			require.False(t, math.IsNaN(p.Light().At(3, 4)))
			require.False(t, math.IsNaN(p.Light().FalloffStops()))
		})
	}
	for _, lamps := range [][]Lamp{nil, {{ZMM: 1000}}} {
		_, ok := litPlan(t, lamps...).Light().Lux(0, 0)
		require.False(t, ok, "not known")
	}
}

// Any lamps by vectors, with the beam as the power of two that it is: half to the number of times that ln cos of half
// the beam goes into ln cos of the angle.
func TestLuxAgainstVectors(t *testing.T) {
	const seed = 44
	random := rand.New(rand.NewSource(seed))
	around := func(mm float64) float64 { return mm * (2*random.Float64() - 1) }
	for range 500 {
		lamp := Lamp{XMM: around(1000), YMM: around(1000), ZMM: 1 + 2000*random.Float64(), LuxAt1M: 1e5 * random.Float64(),
			BeamDeg: 1 + 170*random.Float64(), Aim: Aim{XMM: around(500), YMM: around(500), AtDrop: random.Intn(3) == 0}}
		p := litPlan(t, lamp)
		aim := flip.Vec{X: lamp.Aim.XMM, Y: lamp.Aim.YMM}
		if lamp.Aim.AtDrop {
			aim = flip.Vec{Z: p.Drop.DistanceMM}
		}
		from, at := flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: lamp.ZMM}, flip.Vec{X: around(700), Y: around(500)}
		ray := at.Sub(from)
		want := 0.0
		if cos := ray.Unit().Dot(aim.Sub(from).Unit()); cos > 0 {
			halvings := math.Log(cos) / math.Log(math.Cos(lamp.BeamDeg*math.Pi/360))
			want = lamp.LuxAt1M * math.Exp2(-halvings) * ray.Unit().Dot(flip.Vec{Z: -1}) / ray.Scale(1e-3).Dot(ray.Scale(1e-3))
		}
		got, ok := p.Light().Lux(at.X+p.Backdrop.WidthMM/2, at.Y+p.Backdrop.HeightMM/2)
		require.True(t, ok)
		require.InDelta(t, want, got, 1e-7*(1+want), "seed %d, %+v at %+v", seed, lamp, at)
	}
}

// A spot a few millimetres wide between two lattice points is found all the same, beside a flood that it outshines.
func TestBrightestPlaceOfANarrowBeam(t *testing.T) {
	p := litPlan(t, Lamp{XMM: -300, ZMM: 300, LuxAt1M: 1000},
		Lamp{XMM: 100, ZMM: 1000, LuxAt1M: 50_000, BeamDeg: 0.3, Aim: Aim{XMM: 123.4, YMM: -77.7}})
	brightest := p.Light().Brightest()
	require.InDelta(t, p.Backdrop.WidthMM/2+123.4, brightest.XMM, 0.1)
	require.InDelta(t, p.Backdrop.HeightMM/2-77.7, brightest.YMM, 0.1)
}

// A lamp of which only the place is known is written as it always was.
func TestLampAsJSON(t *testing.T) {
	for text, lamp := range map[string]Lamp{
		`{"x":-600,"y":-400,"z":900}`:                                lampAt(-600, -400, 900),
		`{"x":0,"y":0,"z":900,"lux_at_1m":9500,"aim":{"drop":true}}`: {ZMM: 900, LuxAt1M: 9500, Aim: Aim{AtDrop: true}},
		`{"x":0,"y":0,"z":900,"size_mm":300,"beam_deg":60,"aim":{"x":20}}`: {ZMM: 900, SizeMM: 300, BeamDeg: 60,
			Aim: Aim{XMM: 20}},
	} {
		got, err := json.Marshal(lamp)
		require.NoError(t, err)
		require.Equal(t, text, string(got))
		var back Lamp
		require.NoError(t, json.Unmarshal(got, &back))
		require.Equal(t, lamp, back)
	}
}

func TestLampsRefused(t *testing.T) {
	good := Lamp{ZMM: 900, LuxAt1M: 1000, SizeMM: 300, BeamDeg: 60}
	require.NoError(t, CheckLamps([]Lamp{good, good}))
	for _, c := range []struct {
		name, says string
		change     func(l *Lamp)
	}{
		{"light of one alone", "say it of all, or of none", func(l *Lamp) { l.LuxAt1M = 0 }},
		{"light below nothing", "lamp 2: -1 lux at 1m can't be", func(l *Lamp) { l.LuxAt1M = -1 }},
		{"light without end", "lamp 2: +Inf lux at 1m can't be", func(l *Lamp) { l.LuxAt1M = math.Inf(1) }},
		{"no light known", "lamp 2: NaN lux at 1m can't be", func(l *Lamp) { l.LuxAt1M = math.NaN() }},
		{"a face below nothing", "lamp 2: a shining face -3mm wide can't be", func(l *Lamp) { l.SizeMM = -3 }},
		{"a beam past all round", "lamp 2: a beam of 360 degrees can't be\nhint: take a full angle from 0.1 to 179",
			func(l *Lamp) { l.BeamDeg = 360 }},
		{"a beam without width", "lamp 2: a beam of NaN degrees can't be", func(l *Lamp) { l.BeamDeg = math.NaN() }},
		{"aimed nowhere", "lamp 2: a lamp can't be aimed at NaN, 0mm", func(l *Lamp) { l.Aim.XMM = math.NaN() }},
	} {
		t.Run(c.name, func(t *testing.T) {
			bad := good
			c.change(&bad)
			require.ErrorContains(t, CheckLamps([]Lamp{good, bad}), c.says)
		})
	}
}
