package shot

import (
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// plain is a setup with the usual figures.
func plain() layout.Setup {
	a4, _ := layout.ParsePaper("A4")
	return layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300,
		Fit: layout.Cover, Proportions: 1.5, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 6000, HeightPx: 4000,
			LensMM: 100, FNumber: 16, Focus: layout.FocusBest},
	}
}

// wide is a setup whose frame sees past the board: 400 mm wide at the drop.
func wide() layout.Setup {
	s := plain()
	s.DistanceMM = 400
	s.Camera.LensMM, s.Camera.FrameWidthMM = 0, 400
	return s
}

func mustPlan(t *testing.T, s layout.Setup) layout.Plan {
	t.Helper()
	p, err := s.Plan()
	require.NoError(t, err)
	return p
}

// litPlan is the usual plan, 40 cm off, with lamps.
func litPlan(t *testing.T, lamps ...layout.Lamp) layout.Plan {
	t.Helper()
	s := plain()
	s.DistanceMM, s.Lamps = 400, lamps
	return mustPlan(t, s)
}

// bodied is the usual plan at 400 mm for a body and a stop.
func bodied(t *testing.T, body flip.Body, fNumber float64) layout.Plan {
	t.Helper()
	s := plain()
	s.Drop.Body, s.DistanceMM, s.Camera.FNumber = body, 400, fNumber
	return mustPlan(t, s)
}

var bodies = []flip.Body{flip.Ball, flip.UprightRod, flip.LevelRod}

// bentSetups are setups whose picture is not plain, by name.
func bentSetups() map[string]layout.Setup {
	all := map[string]layout.Setup{}
	add := func(name string, change func(*layout.Setup)) {
		s := plain()
		s.DistanceMM, s.Fill = 300, 0.85
		change(&s)
		all[name] = s
	}
	add("straight", func(s *layout.Setup) { s.Look = layout.Straight })
	add("half straight", func(s *layout.Setup) { s.Look = 0.5 })
	add("straight, inside", func(s *layout.Setup) { s.Look, s.Fit = layout.Straight, layout.Inside })
	add("turned", func(s *layout.Setup) { s.Framing.TurnDeg = 20 })
	add("turned, inside, straight", func(s *layout.Setup) {
		s.Look, s.Fit, s.Framing.TurnDeg = layout.Straight,
			layout.Inside, -33
	})
	add("off its middle", func(s *layout.Setup) { s.Look, s.Framing.OffX, s.Framing.OffY = layout.Straight, 0.1, -0.2 })
	add("off its middle, inside", func(s *layout.Setup) {
		s.Look, s.Fit, s.Framing.OffX, s.Framing.OffY = layout.Straight, layout.Inside, 0.3,
			-0.2
	})
	add("round", func(s *layout.Setup) { s.Framing.Round, s.Fill = true, 0.95 })
	add("upright rod", func(s *layout.Setup) { s.Look, s.Drop.Body = layout.Straight, flip.UprightRod })
	add("level rod, half", func(s *layout.Setup) { s.Look, s.Drop.Body = 0.5, flip.LevelRod })
	add("upright rod, turned", func(s *layout.Setup) {
		s.Look, s.Drop.Body, s.Framing.TurnDeg = layout.Straight,
			flip.UprightRod, 10
	})
	add("pressed flat", func(s *layout.Setup) { s.Look, s.Drop.HeightOverWidth = layout.Straight, 0.85 })
	add("drawn long, inside", func(s *layout.Setup) {
		s.Look, s.Fit, s.Drop.HeightOverWidth = layout.Straight,
			layout.Inside, 1.15
	})
	return all
}

// inked tells whether a place, optical mm from the axis, is printed, by the exact picture coordinates of the place:
// within the fill, and where no background fills that up within the picture's sides, or a round subject's circle.
func inked(p layout.Plan, xMM, yMM float64) bool {
	s := p.Sight()
	throughXMM, throughYMM, ok := s.SeenThrough(xMM, yMM)
	if !ok || s.ShareAt(throughXMM, throughYMM) > p.Picture.Fill {
		return false
	}
	if p.Backdrop.FillOnly {
		return true
	}
	u, v, ok := p.PictureAt(layout.Point{XMM: xMM + p.Backdrop.WidthMM/2, YMM: yMM + p.Backdrop.HeightMM/2})
	if f := p.Picture.Framing; f.Round {
		width, height := p.Picture.FlatWidthMM, p.Picture.FlatHeightMM
		radius := min((0.5-math.Abs(f.OffX))*width, (0.5-math.Abs(f.OffY))*height)
		return ok && math.Hypot((u-0.5-f.OffX)*width, (v-0.5-f.OffY)*height) <= radius
	}
	return ok && u >= 0 && u <= 1 && v >= 0 && v <= 1
}
