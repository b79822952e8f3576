package shot

import (
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// In the level plane a spheroid is a ball of its width, so what the picture's width becomes follows from the
// closed form of a ball that is wider by the cube root.
func TestSwing(t *testing.T) {
	p := mustPlan(t, plain())
	s, ok := Of(p).Swing()
	require.True(t, ok)
	require.InDelta(t, 0.9, s.Flat.HeightOverWidth, 1e-12)
	require.InDelta(t, 1/0.9, s.Long.HeightOverWidth, 1e-12)
	require.Zero(t, s.PerSecond, "of an unnamed liquid")
	for _, swung := range []SwungPicture{s.Flat, s.Long} {
		wider := p.Sight()
		wider.Drop.DiameterMM /= math.Cbrt(swung.HeightOverWidth)
		fill, ok := wider.FillAt(p.Picture.ReachMM)
		require.True(t, ok)
		require.InDelta(t, fill*wider.ApparentRadiusMM()/(p.Picture.Fill*p.Sight().ApparentRadiusMM()), swung.WidthShare,
			1e-7)
	}
	require.Greater(t, s.Flat.WidthShare, s.Flat.HeightShare)
	require.Less(t, s.Long.WidthShare, s.Long.HeightShare)

	oblate := plain()
	oblate.Drop.HeightOverWidth, oblate.Material = 0.85, "water"
	q := mustPlan(t, oblate)
	s, ok = Of(q).Swing()
	require.True(t, ok)
	require.InDelta(t, 0.85, s.Flat.HeightOverWidth, 1e-12)
	require.InDelta(t, 1, s.Flat.WidthShare, 1e-9, "as planned")
	require.InDelta(t, 1, s.Flat.HeightShare, 1e-9)
	rod := plain()
	rod.Drop.Body = flip.LevelRod
	_, ok = Of(mustPlan(t, rod)).Swing()
	require.False(t, ok)
}

// ellipse is the upright cut through a drop and its camera, for a trace that shares nothing with flip's: z toward the
// backdrop, y up, the drop z²/a² + y²/b² = 1, the pupil at (-camera, 0).
type ellipse struct{ a, b, index, cameraMM, distanceMM float64 }

// bend is Snell's law for the angles of a ray and of the surface's outward normal, in air outside.
func (e ellipse) bend(ray, normal, from, to float64) float64 {
	incidence := math.Remainder(ray-normal, 2*math.Pi)
	if math.Abs(incidence) > math.Pi/2 { // against the ray lies the other side of the normal
		normal += math.Pi
		incidence = math.Remainder(ray-normal, 2*math.Pi)
	}
	return normal + math.Asin(from/to*math.Sin(incidence))
}

// meets is the nearest place, past the start, where a line meets the ellipse.
func (e ellipse) meets(z, y, angle float64) (float64, float64) {
	dy, dz := math.Sincos(angle)
	p := dz*dz/(e.a*e.a) + dy*dy/(e.b*e.b)
	q := z*dz/(e.a*e.a) + y*dy/(e.b*e.b)
	r := z*z/(e.a*e.a) + y*y/(e.b*e.b) - 1
	root := math.Sqrt(q*q - p*r)
	t := (-q - root) / p
	if t < 1e-9 {
		t = (-q + root) / p
	}
	return z + t*dz, y + t*dy
}

// lands is the height on the backdrop of the ray that crosses the drop's plane at y.
func (e ellipse) lands(y float64) float64 {
	angle := math.Atan(y / e.cameraMM)
	z, at := e.meets(-e.cameraMM, 0, angle)
	angle = e.bend(angle, math.Atan2(at/(e.b*e.b), z/(e.a*e.a)), 1, e.index)
	z, at = e.meets(z, at, angle)
	angle = e.bend(angle, math.Atan2(at/(e.b*e.b), z/(e.a*e.a)), e.index, 1)
	return at + (e.distanceMM-z)*math.Tan(angle)
}

// shows is where in the drop's plane a height below the axis is seen, above it.
func (e ellipse) shows(heightMM float64) float64 {
	low, high := 0.0, 0.99*e.b
	for range 200 {
		if middle := (low + high) / 2; -e.lands(middle) < heightMM {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// A 5 mm drop, 0.9 and 1.11 times as high as wide: at the edge of a fill of 0.85 the picture's height changes by -5 and
// +6 %, in the middle by -8.5 and +11.3 %.
func TestSwingAgainstAnIndependentTrace(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	p := mustPlan(t, s)
	swing, ok := Of(p).Swing()
	require.True(t, ok)
	round := ellipse{2.5, 2.5, 1.333, 300, 400}
	reachMM := -round.lands(0.85 * p.Sight().ApparentRadiusMM())
	require.InEpsilon(t, p.Picture.ReachMM, reachMM, 1e-9)
	for _, c := range []struct {
		name         string
		swung        SwungPicture
		edge, middle float64 // change of the height, in percent
	}{
		{"flat", swing.Flat, -5, -8.5}, {"long", Of(p).swung(1.11), 6, 11.3}, {"as long as flat", swing.Long, 6, 11.4},
	} {
		t.Run(c.name, func(t *testing.T) {
			k := c.swung.HeightOverWidth
			a := 2.5 / math.Cbrt(k)
			upright, level := ellipse{a, k * a, 1.333, 300, 400}, ellipse{a, a, 1.333, 300, 400}
			share := func(swung ellipse, part float64) float64 {
				return swung.shows(part*reachMM) / round.shows(part*reachMM)
			}
			require.InDelta(t, share(upright, 1), c.swung.HeightShare, 1e-7)
			require.InDelta(t, share(level, 1), c.swung.WidthShare, 1e-7)
			require.InDelta(t, share(upright, 0.25), c.swung.MiddleHeightShare, 1e-7)
			require.InDelta(t, share(level, 0.25), c.swung.MiddleWidthShare, 1e-7)
			require.InDelta(t, share(level, 1)/share(upright, 1), c.swung.ProportionsShare, 1e-6)
			require.InDelta(t, share(level, 0.25)/share(upright, 0.25), c.swung.MiddleProportionsShare, 1e-6)
			require.InDelta(t, c.edge, 100*(c.swung.HeightShare-1), 0.5)
			require.InDelta(t, c.middle, 100*(c.swung.MiddleHeightShare-1), 0.05)
		})
	}
}

// 5 mm of water swings 30.74 times a second and rings 1.2457 s (by hand, in flip/motion): at 12,500 frames a
// second that is 406.6 frames, and at 1980.57 mm/s 64.43 mm of fall. Syrup of 60 % does 27.88 times.
func TestSwingInTime(t *testing.T) {
	at := func(material string, shooting layout.Shooting, frameRate float64) Swing {
		s := plain()
		s.DistanceMM, s.Material, s.Shooting, s.Camera.FrameRate = 400, material, shooting, frameRate
		swing, ok := Of(mustPlan(t, s)).Swing()
		require.True(t, ok)
		return swing
	}
	water := at("water", layout.Shooting{FallMM: 200}, 12500)
	require.InDelta(t, 30.74, water.PerSecond, 0.005)
	require.InDelta(t, 1.2457, water.RingsS, 0.0005)
	require.InDelta(t, 406.6, water.FramesPerSwing, 0.1)
	require.InDelta(t, 64.43, water.FallsMM, 0.02)
	require.InDelta(t, 27.88, at("syrup-60", layout.Shooting{}, 0).PerSecond, 0.01)
	still := at("water", layout.Shooting{}, 0)
	require.Positive(t, still.PerSecond)
	require.Zero(t, still.FramesPerSwing, "no rate")
	require.Zero(t, still.FallsMM, "no speed")
	for _, material := range []string{"glycerol", "crown-glass", "1.38"} {
		got := at(material, layout.Shooting{FallMM: 200}, 12500)
		got.Flat, got.Long = SwungPicture{}, SwungPicture{}
		require.Zero(t, got, material)
	}
}
