package shot

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// What the frame sees, worked by hand: a 36 mm sensor and a 100 mm lens 300 mm off see 36 (300 - 100) / 100 =
// 72 mm at the drop (thin lens; Hecht, Optics, 5.2.3), and 72 (300 + 400) / 300 = 168 mm at a board 400 mm
// further on (similar triangles).
func TestCoverageByHand(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	p := mustPlan(t, s)
	c := Of(p).Coverage()
	require.InDelta(t, 168, c.Sees.WidthMM, 1e-9)
	require.InDelta(t, 112, c.Sees.HeightMM, 1e-9)
	require.InDelta(t, 168*112/(p.Backdrop.WidthMM*p.Backdrop.HeightMM), c.BackdropShare, 1e-12)
	require.True(t, c.Covered())

	p = mustPlan(t, wide())
	c = Of(p).Coverage()
	require.InDelta(t, 400*700.0/300, c.Sees.WidthMM, 1e-9)
	require.InDelta(t, 1, c.BackdropShare, 1e-12, "the board lies in the frame whole")
	var sides []string
	for _, e := range c.Edges {
		sides = append(sides, e.Side)
	}
	require.Equal(t, []string{"left", "right", "top", "bottom"}, sides)
}

// The vector trace, which shares nothing with the similar triangles: rays past the drop through the frame's
// corner land on the corner of what the frame sees, those through the pixels where an edge shows land on the
// board's edge, and rays from the pupil's rim spread as far as the blur.
func TestCoverageAgainstTheTrace(t *testing.T) {
	const seed = 61
	random := rand.New(rand.NewSource(seed))
	edges := 0
	for range 300 {
		s := wide()
		s.DistanceMM, s.Camera.FrameWidthMM = 60+600*random.Float64(), 20+500*random.Float64()
		s.Camera.FNumber = 2 + 30*random.Float64()
		p, err := s.Plan()
		require.NoError(t, err, "seed %d", seed)
		c, k := Of(p).Coverage(), p.Camera
		trace := func(iPx, jPx, pupilX, pupilY float64) flip.Landing {
			through := k.At(iPx, jPx)
			pupil := flip.Vec{X: pupilX, Y: pupilY, Z: -p.Drop.CameraMM}
			middle := flip.Vec{X: 0, Y: 0, Z: -p.Drop.CameraMM}
			chief := flip.Vec{X: through.XMM, Y: through.YMM, Z: 0}.Sub(middle)
			sharp := middle.Add(chief.Scale(k.FocusMM / p.Drop.CameraMM))
			l, ok := p.Sight().Trace(flip.Ray{From: pupil, Dir: sharp.Sub(pupil).Unit()})
			require.True(t, ok)
			require.False(t, l.Through)
			return l
		}
		corner := trace(float64(k.WidthPx), float64(k.HeightPx), 0, 0)
		require.InDelta(t, c.Sees.WidthMM/2, corner.XMM, 1e-9*c.Sees.WidthMM)
		require.InDelta(t, c.Sees.HeightMM/2, corner.YMM, 1e-9*c.Sees.WidthMM)

		r := k.PupilMM() / 2
		blur := trace(float64(k.WidthPx), 0, -r, 0).XMM - trace(float64(k.WidthPx), 0, r, 0).XMM
		require.InDelta(t, c.EdgeBlurMM, math.Abs(blur), 1e-9*c.Sees.WidthMM, "seed %d", seed)

		for _, e := range c.Edges {
			edges++
			halfW, halfH := p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2
			switch e.Side {
			case "left":
				require.InDelta(t, -halfW, trace(e.AtPx, 0, 0, 0).XMM, 1e-6)
			case "right":
				require.InDelta(t, halfW, trace(e.AtPx, 0, 0, 0).XMM, 1e-6)
			case "top":
				require.InDelta(t, -halfH, trace(0, e.AtPx, 0, 0).YMM, 1e-6)
			case "bottom":
				require.InDelta(t, halfH, trace(0, e.AtPx, 0, 0).YMM, 1e-6)
			}
		}
	}
	require.Greater(t, edges, 100)
}

// asked is a remedy asked for again.
func (r Remedy) asked(s layout.Setup, change func(*layout.Setup)) (layout.Plan, error) {
	s.DistanceMM, s.Print, s.Fill = 0, layout.Size{}, 0
	change(&s)
	return s.Plan()
}

// Every remedy, asked for again by its own figures, gets the edge out of the frame, and one a step less does not.
func TestRemediesMend(t *testing.T) {
	const seed = 62
	random := rand.New(rand.NewSource(seed))
	found := map[string]int{}
	for i := range 60 {
		s := wide()
		s.Fit = []layout.Fit{layout.Cover, layout.Inside}[random.Intn(2)]
		s.Proportions = 0.6 + 1.5*random.Float64()
		s.DistanceMM, s.Camera.FrameWidthMM = 80+400*random.Float64(), 150+350*random.Float64()
		p := mustPlan(t, s)
		r := Of(p).CoverageRemedies()
		if Of(p).Coverage().Covered() {
			require.Equal(t, Remedies{}, r)
			continue
		}
		covered := func(name string, want bool, q layout.Plan, err error) {
			t.Helper()
			require.NoError(t, err, "seed %d, case %d, %s", seed, i, name)
			require.Equal(t, want, Of(q).Coverage().Covered(), "seed %d, case %d, %s: %+v in a frame that needs %+v", seed, i,
				name, q.Picture, Of(q).Coverage().Needs)
			if want {
				found[name]++
			}
		}
		for name, x := range map[string]*Remedy{"larger fill": r.Fill, "nearer": r.Nearer, "further": r.Further} {
			if x == nil {
				continue
			}
			q, err := x.asked(s, func(s *layout.Setup) { s.DistanceMM, s.Print = x.DistanceMM, x.Print })
			covered(name, true, q, err)
			require.LessOrEqual(t, len(q.Sheets), x.SheetsAtMost)
			switch name {
			case "larger fill":
				require.InDelta(t, p.Drop.DistanceMM, x.DistanceMM, lengthStepMM)
				q, err = x.asked(s, func(s *layout.Setup) { s.DistanceMM, s.Fill = x.DistanceMM, x.Fill-0.002 })
			case "nearer":
				require.InDelta(t, p.Picture.WidthMM, x.Print.WidthMM, lengthStepMM)
				q, err = x.asked(s, func(s *layout.Setup) { s.DistanceMM, s.Print = x.DistanceMM+2, x.Print })
			case "further":
				require.InDelta(t, p.Picture.Fill, x.Fill, 0.002)
				q, err = x.asked(s, func(s *layout.Setup) { s.DistanceMM, s.Fill = x.DistanceMM-2, p.Picture.Fill })
			}
			covered(name, false, q, err)
		}
		if x := r.Surround; x != nil {
			q, err := x.asked(s, func(s *layout.Setup) {
				s.DistanceMM, s.Print, s.Surround, s.SurroundSize = x.DistanceMM, x.Print, layout.Stretch, x.Backdrop
			})
			covered("surround", true, q, err)
			require.InDelta(t, p.Picture.WidthMM, q.Picture.WidthMM, lengthStepMM, "the print stays")
		}
	}
	for _, name := range []string{"larger fill", "nearer", "further", "surround"} {
		require.Greater(t, found[name], 5, name)
	}
}
