package shot

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// closeUp is a setup whose pupil is large against drop and frame.
func closeUp() layout.Setup {
	s := plain()
	s.Drop.DiameterMM, s.DistanceMM, s.Camera.FrameWidthMM = 4.6, 400, 9
	return s
}

// pathOf is the light figures' word on a path of one lamp: as glare, and as a lamp in view.
func pathOf(p layout.Plan, path string) (glare *Glare, inView *Sighting) {
	f := Of(p).LightFigures()
	for i, g := range f.Glares {
		if g.Path == path && g.Seen {
			glare = &f.Glares[i]
		}
	}
	for i, v := range f.InView {
		if v.Path == path {
			inView = &f.InView[i]
		}
	}
	return glare, inView
}

// Every ray is built anew by vectors: from a place on the pupil to the lamp, or to the board and back by the
// mirror's rule, with the drop traced and the pixel found where the ray crosses the plane in focus. What is
// told to be seen must have such a ray, and what is not must have none among thousands.
func TestLampsAndTheirMirrorImagesAgainstRaysFromAllOverThePupil(t *testing.T) {
	const seed = 46
	random := rand.New(rand.NewSource(seed))
	var outcomes [2][3]int // mirrored or not; by the pupil's middle, by other rays only, not seen
	for range 600 {
		s := closeUp()
		s.Drop.Body = []flip.Body{flip.Ball, flip.UprightRod, flip.LevelRod}[random.Intn(3)]
		s.DistanceMM, s.Camera.FrameWidthMM = 100+400*random.Float64(), 5+math.Pow(random.Float64(), 2)*40
		s.Camera.FNumber = 4 + 28*random.Float64()
		wide := []float64{15, 50}[random.Intn(2)]
		lamp := layout.Lamp{XMM: wide * (random.Float64() - 0.5), YMM: wide * (random.Float64() - 0.5),
			ZMM: 20 + (s.DistanceMM+250)*random.Float64()}
		s.Lamps = []layout.Lamp{lamp}
		p := mustPlan(t, s)
		if random.Intn(2) == 0 { // a board so small that it ends in the middle of the rays
			p.Backdrop.WidthMM, p.Backdrop.HeightMM = 2+20*random.Float64(), 2+20*random.Float64()
		}
		d, boardZ, radius := p.Drop, p.Drop.DistanceMM, p.Camera.PupilMM()/2
		focusZ := p.Camera.FocusMM - d.CameraMM
		source := flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: boardZ - lamp.ZMM}
		onto := func(from, dir flip.Vec, z float64) flip.Vec { return from.Add(dir.Scale((z - from.Z) / dir.Z)) }
		hidden := func(from, dir flip.Vec) bool {
			l, ok := p.Sight().Trace(flip.Ray{From: from, Dir: dir.Unit()})
			return !ok || l.Through
		}
		// records tells whether the frame records a ray from the pupil in a direction, and on which place of
		// the drop's plane.
		records := func(from, dir flip.Vec) (at flip.Vec, ok bool) {
			middle := flip.Vec{Z: -d.CameraMM}
			at = onto(middle, onto(from, dir, focusZ).Sub(middle), 0)
			return at, math.Abs(at.X) <= p.Camera.FrameWidthMM/2+1e-9 && math.Abs(at.Y) <= p.Camera.FrameHeightMM/2+1e-9
		}
		// arrives tells whether the light takes a ray between a place on the pupil and the lamp. The lamp's
		// mirror image is as far behind the board.
		arrives := func(from flip.Vec, mirrored bool) bool {
			to := source
			if mirrored {
				to.Z = 2*boardZ - source.Z
			}
			dir := to.Sub(from)
			if _, ok := records(from, dir); !ok {
				return false
			}
			if mirrored {
				q := onto(from, dir, boardZ)
				if math.Abs(q.X) > p.Backdrop.WidthMM/2 || math.Abs(q.Y) > p.Backdrop.HeightMM/2 {
					return false
				}
			}
			return to.Z <= 0 || !hidden(from, dir)
		}
		anywhere := func(mirrored bool) bool {
			const rings, spokes = 40, 90
			for i := range rings + 1 {
				for j := range spokes {
					sin, cos := math.Sincos(2 * math.Pi * float64(j) / spokes)
					r := radius * float64(i) / rings * (1 - 1e-12)
					if arrives(flip.Vec{X: r * cos, Y: r * sin, Z: -d.CameraMM}, mirrored) {
						return true
					}
				}
			}
			return false
		}
		g, v := pathOf(p, Direct)
		count := func(mirrored, told bool) {
			kind, which := 2, 0
			if mirrored {
				which = 1
			}
			if told {
				if kind = 1; arrives(flip.Vec{Z: -d.CameraMM}, mirrored) {
					kind = 0
				}
			}
			outcomes[which][kind]++
		}
		count(true, g != nil)
		if g == nil {
			require.False(t, anywhere(true), "seed %d: glare was missed, lamp %+v, %+v", seed, lamp, p.Drop)
		} else {
			at := p.Camera.At(g.Frame.XPx, g.Frame.YPx)
			k := p.Camera.FocusMM / d.CameraMM
			q := flip.Vec{X: g.Board.XMM - p.Backdrop.WidthMM/2, Y: g.Board.YMM - p.Backdrop.HeightMM/2, Z: boardZ}
			dir := q.Sub(flip.Vec{X: at.XMM * k, Y: at.YMM * k, Z: focusZ})
			from := onto(q, dir, -d.CameraMM)
			require.LessOrEqual(t, math.Hypot(from.X, from.Y), radius+1e-6, "seed %d: through the pupil", seed)
			require.False(t, hidden(from, dir), "seed %d: past the drop", seed)
			back := onto(q, flip.Vec{X: dir.X, Y: dir.Y, Z: -dir.Z}, source.Z)
			require.InDelta(t, source.X, back.X, 1e-6)
			require.InDelta(t, source.Y, back.Y, 1e-6)
			_, ok := records(from, dir)
			require.True(t, ok, "seed %d: in the frame", seed)
			require.LessOrEqual(t, math.Abs(q.X), p.Backdrop.WidthMM/2+1e-9)
			require.LessOrEqual(t, math.Abs(q.Y), p.Backdrop.HeightMM/2+1e-9)
		}
		count(false, v != nil)
		if v == nil {
			require.False(t, anywhere(false), "seed %d: a lamp was missed, %+v, %+v", seed, lamp, p.Drop)
		} else {
			at := p.Camera.At(v.Frame.XPx, v.Frame.YPx)
			k := p.Camera.FocusMM / d.CameraMM
			dir := flip.Vec{X: at.XMM * k, Y: at.YMM * k, Z: focusZ}.Sub(source)
			from := onto(source, dir, -d.CameraMM)
			require.LessOrEqual(t, math.Hypot(from.X, from.Y), radius+1e-6, "seed %d: through the pupil", seed)
			_, ok := records(from, source.Sub(from))
			require.True(t, ok, "seed %d: in the frame", seed)
			require.True(t, source.Z <= 0 || !hidden(from, source.Sub(from)), "seed %d: past the drop", seed)
		}
	}
	t.Logf("lamps, then mirror images, seen by the pupil's middle, by other rays only, not at all: %v", outcomes)
	for _, of := range outcomes {
		for _, n := range of {
			require.Greater(t, n, 20, "%v", outcomes)
		}
	}
}

// The outermost ray, from the pupil's edge over the frame's opposite edge in the plane in focus and on to the
// mirror image's depth, is the last that brings its blur in: similar triangles.
func TestGlareIsGoneWhereTheLastRayOfThePupilIs(t *testing.T) {
	usual := plain()
	usual.DistanceMM = 200
	for _, c := range []struct {
		name   string
		setup  layout.Setup
		lamp   layout.Lamp
		wantMM float64 // to a millimetre
	}{
		{"the usual set-up", usual, layout.Lamp{XMM: 181, YMM: 0, ZMM: 1000}, 193},
		{"a wide pupil, a lamp on the axis", closeUp(), layout.Lamp{XMM: 40, YMM: 0, ZMM: 1000}, 61},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.setup.Lamps = []layout.Lamp{c.lamp}
			p := mustPlan(t, c.setup)
			g, _ := pathOf(p, Direct)
			require.NotNil(t, g)
			depthMM, focusMM := p.Drop.CameraMM+p.Drop.DistanceMM+c.lamp.ZMM, p.Camera.FocusMM
			edge, pupil := p.Camera.FrameWidthMM/2*focusMM/p.Drop.CameraMM, p.Camera.PupilMM()/2
			last := edge + (edge+pupil)*(depthMM-focusMM)/focusMM
			require.InDelta(t, last, g.BeyondMM, 0.5)
			require.InDelta(t, c.wantMM, g.BeyondMM, 1)
		})
	}
}

func TestLampBlurComesIn(t *testing.T) {
	small := closeUp()
	small.Camera.FNumber = 64 // a pupil smaller than the drop
	wide := plain()           // the whole pupil's rays in the frame
	wide.DistanceMM = 400
	for _, c := range []struct {
		name          string
		setup         layout.Setup
		lamp          layout.Lamp
		glare, inView bool // on the direct path
	}{
		{"behind the drop, but wider", closeUp(), layout.Lamp{XMM: 0, YMM: 0, ZMM: 1000}, true, false},
		{"behind the drop, and hidden by it", small, layout.Lamp{XMM: 0, YMM: 0, ZMM: 1000}, false, false},
		// The pupil, 6.25 mm across, has rays over 4.91 mm of the drop's plane, 0.06 mm off the axis: they pass
		// a drop of 5 mm that way only.
		{"behind the drop, but for a crescent on a diagonal", wide, layout.Lamp{XMM: 0.2, YMM: 0.2, ZMM: 700}, true, false},
		{"past the frame, but blurred into it", closeUp(), layout.Lamp{XMM: 40, YMM: 0, ZMM: 1000}, true, false},
		{"past the frame, blur and all", closeUp(), layout.Lamp{XMM: 62, YMM: 0, ZMM: 1000}, false, false},
		{"before the drop, in the cone of light", closeUp(), layout.Lamp{XMM: 0, YMM: 5.9, ZMM: 600}, true, true},
		{"before the drop, outside it", closeUp(), layout.Lamp{XMM: 0, YMM: 6.1, ZMM: 600}, true, false},
		{"behind the drop, between it and the board", closeUp(), layout.Lamp{XMM: 0, YMM: 0, ZMM: 100}, true, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.setup.Lamps = []layout.Lamp{c.lamp}
			p := mustPlan(t, c.setup)
			g, v := pathOf(p, Direct)
			require.Equal(t, c.glare, g != nil)
			require.Equal(t, c.inView, v != nil)
			if g != nil {
				require.GreaterOrEqual(t, g.Frame.XPx, -1e-6)
				require.LessOrEqual(t, g.Frame.XPx, 6000+1e-6)
				at := p.Camera.At(g.Frame.XPx, g.Frame.YPx)
				require.Greater(t, math.Hypot(at.XMM, at.YMM), p.Sight().ApparentRadiusMM()*0.97,
					"beside the drop, as far as its edge is sharp")
			}
		})
	}
}

// A lamp that the drop shows just outside the frame: the furthest that a ray from the pupil reaches by way of
// the frame's edge, traced in the plane that holds the axis, is where the lamp goes out of view. The blur is
// told by its spread, which for a ball's aberrations is not quite its edge.
func TestBlurOfALampThroughTheDrop(t *testing.T) {
	for _, c := range []struct {
		name         string
		body         flip.Body
		frameWidthMM float64
		fNumber      float64
		level        bool    // the lamp moves to the side, else up and down
		part         float64 // of the way from the pinhole's limit to the pupil's that may be off
	}{
		{"along an upright rod", flip.UprightRod, 30, 8, false, 0.02},
		{"along a level rod", flip.LevelRod, 30, 8, true, 0.02},
		{"across an upright rod", flip.UprightRod, 30, 22, true, 0.25},
		{"in a ball, to the side", flip.Ball, 30, 22, true, 0.25},
		{"in a ball, down", flip.Ball, 30, 22, false, 0.25},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			s.Drop.Body, s.Drop.DiameterMM, s.CameraMM, s.DistanceMM = c.body, 60, 800, 300
			s.Camera.FrameWidthMM, s.Camera.FNumber = c.frameWidthMM, c.fNumber
			const z = 100.0
			lay := func(mm float64) layout.Lamp {
				if c.level {
					return layout.Lamp{XMM: mm, YMM: 0, ZMM: z}
				}
				return layout.Lamp{XMM: 0, YMM: mm, ZMM: z}
			}
			s.Lamps = []layout.Lamp{lay(0)}
			p := mustPlan(t, s)
			in := func(mm float64) bool {
				q := p
				q.Lamps = []layout.Lamp{lay(mm)}
				_, v := pathOf(q, ThroughDrop)
				return v != nil
			}
			near, far := 0.0, 400.0
			require.True(t, in(near))
			require.False(t, in(far))
			for far-near > 1e-4 {
				if middle := (near + far) / 2; in(middle) {
					near = middle
				} else {
					far = middle
				}
			}
			sight := p.Sight()
			sight.DistanceMM = p.Drop.DistanceMM - z
			half := p.Camera.FrameHeightMM / 2
			if c.level {
				half = p.Camera.FrameWidthMM / 2
			}
			reach := func(pupilMM float64) float64 {
				focus := flip.Vec{Y: half * p.Camera.FocusMM / 800, Z: p.Camera.FocusMM - 800}
				from := flip.Vec{Y: pupilMM, Z: -800}
				if c.level {
					focus.X, focus.Y, from.X, from.Y = focus.Y, 0, from.Y, 0
				}
				l, ok := sight.Trace(flip.Ray{From: from, Dir: focus.Sub(from).Unit()})
				require.True(t, ok && l.Through)
				return math.Hypot(l.XMM, l.YMM)
			}
			pinhole, furthest := reach(0), 0.0
			for i := range 201 {
				furthest = max(furthest, reach((float64(i)/100-1)*p.Camera.PupilMM()/2))
			}
			t.Logf("pinhole %.3f, pupil %.3f, told %.3f mm", pinhole, furthest, near)
			require.Greater(t, furthest, pinhole+0.1, "there must be a blur to see")
			require.InDelta(t, furthest, near, c.part*(furthest-pinhole))
		})
	}
}
