package shot

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// The mirror's place is where the way from lamp to board to camera is shortest (Hero of Alexandria,
// Catoptrics): found by looking, not by mirroring.
func TestDirectGlareIsTheShortestWay(t *testing.T) {
	const seed = 44
	random := rand.New(rand.NewSource(seed))
	for range 50 {
		lamp := layout.Lamp{XMM: 2000 * (random.Float64() - 0.5), YMM: 2000 * (random.Float64() - 0.5),
			ZMM: 50 + 2000*random.Float64()}
		p := litPlan(t, lamp)
		g, ok := Of(p).glare(lamp, Direct)
		require.True(t, ok)
		camera := flip.Vec{Z: p.Drop.CameraMM + p.Drop.DistanceMM}
		source := flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: lamp.ZMM}
		way := func(x, y float64) float64 {
			q := flip.Vec{X: x, Y: y}
			a, b := source.Sub(q), camera.Sub(q)
			return math.Sqrt(a.Dot(a)) + math.Sqrt(b.Dot(b))
		}
		x, y := g.Board.XMM-p.Backdrop.WidthMM/2, g.Board.YMM-p.Backdrop.HeightMM/2
		// The way is even about its shortest: both neighbours are longer, and equally so.
		const step = 0.5
		for _, n := range [][2]float64{{step, 0}, {0, step}} {
			less, more := way(x-n[0], y-n[1])-way(x, y), way(x+n[0], y+n[1])-way(x, y)
			require.Positive(t, less, "seed %d", seed)
			require.Positive(t, more, "seed %d", seed)
			require.InEpsilon(t, less, more, 0.02, "seed %d lamp %+v", seed, lamp)
		}
		// The camera sees that place there.
		at := p.Camera.At(g.Frame.XPx, g.Frame.YPx)
		k := (p.Drop.CameraMM + p.Drop.DistanceMM) / p.Drop.CameraMM
		require.InDelta(t, x, at.XMM*k, 1e-9)
		require.InDelta(t, y, at.YMM*k, 1e-9)
	}
}

// Through the drop: the camera's ray is traced to the board, turned round there by the mirror's rule (the
// part along the board stays, the part across it changes sign), and must hit the lamp.
func TestGlareThroughTheDropHitsTheLamp(t *testing.T) {
	const seed = 45
	random := rand.New(rand.NewSource(seed))
	for _, body := range []flip.Body{flip.Ball, flip.UprightRod, flip.LevelRod} {
		seen := 0
		for range 60 {
			lamp := layout.Lamp{XMM: 3000 * (random.Float64() - 0.5), YMM: 2000 * (random.Float64() - 0.5),
				ZMM: 50 + 2000*random.Float64()}
			s := plain()
			s.Drop.Body, s.DistanceMM, s.Lamps = body, 400, []layout.Lamp{lamp}
			p := mustPlan(t, s)
			g, ok := Of(p).glare(lamp, ThroughDrop)
			if !ok {
				continue
			}
			if g.Frame.XPx == 0 || g.Frame.XPx == 6000 || g.Frame.YPx == 0 || g.Frame.YPx == 4000 {
				continue // only blur comes in: TestBlurOfALampThroughTheDrop
			}
			seen++
			at := p.Camera.At(g.Frame.XPx, g.Frame.YPx)
			ray := p.Sight().PinholeRay(at.XMM, at.YMM)
			near, far := p.Sight(), p.Sight()
			far.DistanceMM++
			a, ok := near.Trace(ray)
			require.True(t, ok && a.Through)
			b, _ := far.Trace(ray)
			require.InDelta(t, a.XMM, g.Board.XMM-p.Backdrop.WidthMM/2, 1e-6)
			require.InDelta(t, a.YMM, g.Board.YMM-p.Backdrop.HeightMM/2, 1e-6)
			dir := flip.Vec{X: b.XMM - a.XMM, Y: b.YMM - a.YMM, Z: 1}
			mirrored := flip.Vec{X: dir.X, Y: dir.Y, Z: -1} // back toward the camera: lamp z counts that way
			t0 := lamp.ZMM / -mirrored.Z
			require.InDelta(t, lamp.XMM, a.XMM+t0*mirrored.X, 1e-3, "seed %d %v %+v", seed, body, lamp)
			require.InDelta(t, lamp.YMM, a.YMM+t0*mirrored.Y, 1e-3, "seed %d %v %+v", seed, body, lamp)
		}
		require.Greater(t, seen, 30, "%v", body)
	}
}

func TestGlareIsToldWhereItIs(t *testing.T) {
	find := func(p layout.Plan, path string) (found *Glare) {
		f := Of(p).LightFigures()
		for i := range f.Glares {
			if f.Glares[i].Path == path {
				found = &f.Glares[i]
			}
		}
		return found
	}
	t.Run("a lamp beside the camera shows beside the drop", func(t *testing.T) {
		g := find(litPlan(t, layout.Lamp{XMM: 60, YMM: 0, ZMM: 700}), Direct)
		require.True(t, g.Seen)
		require.Greater(t, g.Frame.XPx, 3000.0, "to the right, as the lamp is")
		require.InDelta(t, 2000, g.Frame.YPx, 1e-6)
	})
	t.Run("in the drop it shows on the other side", func(t *testing.T) {
		p := litPlan(t, layout.Lamp{XMM: 600, YMM: 0, ZMM: 900})
		g := find(p, ThroughDrop)
		require.True(t, g.Seen)
		require.Less(t, g.Frame.XPx, 3000.0)
		require.Greater(t, g.Board.XMM, p.Backdrop.WidthMM/2)
	})
	t.Run("behind the drop the camera does not see the board itself", func(t *testing.T) {
		require.False(t, find(litPlan(t, layout.Lamp{XMM: 0, YMM: 0, ZMM: 700}), Direct).Seen)
	})
	t.Run("off the board", func(t *testing.T) {
		g := find(litPlan(t, layout.Lamp{XMM: 3000, YMM: 0, ZMM: 900}), ThroughDrop)
		require.True(t, g == nil || !g.Seen)
	})
	t.Run("beyond: gone there, still there two millimetres nearer", func(t *testing.T) {
		for _, body := range []flip.Body{flip.Ball, flip.UprightRod} {
			for _, path := range []string{Direct, ThroughDrop} {
				s := plain()
				s.Drop.Body, s.DistanceMM, s.Lamps = body, 400, []layout.Lamp{{XMM: 60, YMM: 30, ZMM: 900}}
				p := mustPlan(t, s)
				g := find(p, path)
				require.True(t, g.Seen, "%v %s", body, path)
				out, way := g.BeyondMM, math.Hypot(60, 30)
				lampAt := func(mm float64) layout.Lamp { return layout.Lamp{XMM: 60 / way * mm, YMM: 30 / way * mm, ZMM: 900} }
				there, ok := Of(p).glare(lampAt(out), path)
				require.False(t, ok && there.Seen)
				nearer, ok := Of(p).glare(lampAt(out-2), path)
				require.True(t, ok && nearer.Seen, "%v %s: %+v", body, path, g.BeyondMM)
			}
		}
	})
}

func TestLampsInView(t *testing.T) {
	for _, c := range []struct {
		name string
		lamp layout.Lamp
		want []string
	}{
		{"well aside", layout.Lamp{XMM: -600, YMM: -400, ZMM: 900}, nil},
		{"before the drop, in the frame", layout.Lamp{XMM: 20, YMM: 10, ZMM: 450}, []string{Direct}},
		{"behind the camera", layout.Lamp{XMM: 0, YMM: 0, ZMM: 900}, nil},
		{"between drop and board, in both views", layout.Lamp{XMM: 60, YMM: 0, ZMM: 100}, []string{Direct, ThroughDrop}},
		{"between drop and board, aside: in the drop alone", layout.Lamp{XMM: 300, YMM: 0, ZMM: 100}, []string{ThroughDrop}},
		{"far aside: a sliver at the rim", layout.Lamp{XMM: 3000, YMM: 0, ZMM: 100}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := Of(litPlan(t, c.lamp)).LightFigures()
			var got []string
			for _, v := range f.InView {
				require.Equal(t, 1, v.Lamp)
				got = append(got, v.Path)
			}
			require.Equal(t, c.want, got)
		})
	}
}

// A drop of index 2.4 focuses within itself, nR/2(n - 1) = 0.857 R from its middle: it turns over even a place in it,
// where no lamp stands.
func TestNoLampStandsInTheDrop(t *testing.T) {
	s := plain()
	s.Drop.DiameterMM, s.Drop.Index, s.DistanceMM, s.Fill = 20, 2.4, 400, 0.5
	for behindMM, want := range map[float64]int{9: 0, 11: 1} {
		s.Lamps = []layout.Lamp{{XMM: 0, YMM: 0, ZMM: s.DistanceMM - behindMM}}
		p := mustPlan(t, s)
		through := 0
		for _, v := range Of(p).LightFigures().InView {
			if v.Path == ThroughDrop {
				through++
			}
		}
		require.Equal(t, want, through, "%g mm behind the drop's middle", behindMM)
	}
}

func TestCutEdgesFaceTheLamp(t *testing.T) {
	for _, c := range []struct {
		name   string
		from   layout.Corner
		lamps  []layout.Lamp
		better layout.Corner
	}{
		{"as asked", layout.TopLeft, []layout.Lamp{{XMM: -900, YMM: -700, ZMM: 900}}, ""},
		{"from the other side", layout.TopLeft, []layout.Lamp{{XMM: 900, YMM: -700, ZMM: 900}}, layout.TopRight},
		{"from below", layout.TopRight, []layout.Lamp{{XMM: 900, YMM: 700, ZMM: 900}}, layout.BottomRight},
		{"a little from the right: a twentieth of the way casts no shadow", layout.TopLeft,
			[]layout.Lamp{{XMM: 450 + 100, YMM: -700, ZMM: 20_000}}, ""},
		{"a third of the way does", layout.TopLeft, []layout.Lamp{{XMM: 450 + 1000, YMM: -700, ZMM: 3000}}, layout.TopRight},
		{"straight on", layout.BottomLeft, []layout.Lamp{{XMM: 0, YMM: 0, ZMM: 9000}}, ""},
		{"the nearer of two counts", layout.TopLeft, []layout.Lamp{{XMM: -1200, YMM: 0, ZMM: 1500},
			{XMM: 900, YMM: -700, ZMM: 700}}, layout.TopRight},
		{"alike from both sides: no corner is better", layout.TopLeft,
			[]layout.Lamp{{XMM: -900, YMM: 0, ZMM: 900}, {XMM: 900, YMM: 0, ZMM: 900}}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			s.DistanceMM, s.Fill, s.LightFrom, s.Lamps = 400, 0.85, c.from, c.lamps
			f := Of(mustPlan(t, s)).LightFigures()
			require.Equal(t, c.better, f.Facing.Better, "%+v", f.Facing)
			require.Positive(t, f.Facing.AllMM)
			if c.better != "" {
				require.Less(t, f.Facing.BetterTurnedMM, f.Facing.TurnedMM)
			}
		})
	}
}
