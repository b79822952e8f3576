package layout

import (
	"math"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// hangingSetup is a drop of water at a needle of 2 mm.
func hangingSetup(widthMM float64) Setup {
	s := plain()
	water, _ := flip.MaterialByName("water")
	s.Drop = flip.Drop{Body: flip.Hanging, DiameterMM: widthMM, HeldMM: 2, CapillaryMM: water.Liquid.CapillaryMM(),
		Index: water.Index}
	s.Look, s.DistanceMM, s.Fill, s.Print = Straight, 300, 0.85, Size{}
	return s
}

// A hanging drop does not mirror up and down: the map of its print is held against traced rays in all four quarters,
// and rays that are traced from the drop's plane show the picture straight.
func TestStraightPrintOfAHangingDrop(t *testing.T) {
	for _, fit := range []Fit{Cover, Inside} {
		s := hangingSetup(3.4)
		s.Fit = fit
		p, err := s.Plan()
		require.NoError(t, err)
		require.NoError(t, Rounded(p).Check())
		h, sight := p.Hang(), p.Sight()
		halfWidthMM, halfHeightMM := sight.OutlineMM()
		shown := 0
		for x := -0.8; x <= 0.8; x += 0.1 {
			for y := -0.8; y <= 0.8; y += 0.1 {
				through := Point{x * halfWidthMM, y * halfHeightMM}
				if sight.ShareAt(through.XMM, through.YMM) > 0.84 {
					continue
				}
				l, ok := sight.Trace(sight.PinholeRay(through.XMM, through.YMM))
				require.True(t, ok && l.Through)
				at := h.At(l.XMM+p.Backdrop.WidthMM/2, l.YMM+p.Backdrop.HeightMM/2)
				if at.InsideMM < 0 {
					continue
				}
				shown++
				perDrop := p.Picture.MadeFor.FlatPerDrop
				require.InDelta(t, 0.5+through.XMM*perDrop/p.Picture.FlatWidthMM, at.U, 2e-6)
				require.InDelta(t, 0.5+through.YMM*perDrop/p.Picture.FlatHeightMM, at.V, 2e-6)
			}
		}
		require.Greater(t, shown, 80)
	}
}

// The print reaches as far as the drop sees by its lower part, which is further than by its upper one.
func TestPrintOfAHangingDropReachesBothWays(t *testing.T) {
	for _, c := range []struct {
		fit  Fit
		look Look
	}{{Cover, Straight}, {Cover, Bulged}} {
		s := hangingSetup(3.4)
		s.Fit, s.Look = c.fit, c.look
		p, err := s.Plan()
		require.NoError(t, err)
		up, ok := p.Sight().ReachUpMM(p.Picture.Fill)
		require.True(t, ok)
		down, ok := p.Sight().ReachDownMM(p.Picture.Fill)
		require.True(t, ok)
		require.Greater(t, down, 1.2*up)
		require.GreaterOrEqual(t, p.Picture.HeightMM, 2*down*(1-1e-6))
		across, _ := p.Sight().ReachMM(p.Picture.Fill)
		require.GreaterOrEqual(t, p.Picture.WidthMM, 2*across*(1-1e-5))
		require.Less(t, math.Abs(p.Picture.ReachMM-across), 1e-6)
	}
}

func TestHangingDropsThatCantBe(t *testing.T) {
	for _, c := range []struct {
		name, want string
		change     func(*Setup)
	}{
		{"too heavy", "falls off", func(s *Setup) { s.Drop.DiameterMM = 4 }},
		{"no holder", "--held", func(s *Setup) { s.Drop.HeldMM = 0 }},
		{"a holder as wide", "narrower holder", func(s *Setup) { s.Drop.DiameterMM = 2 }},
		{"of nothing known", "--liquid", func(s *Setup) { s.Drop.CapillaryMM = 0 }},
		{"pressed flat", "by its weight", func(s *Setup) { s.Drop.HeightOverWidth = 0.9 }},
		{"that falls", "stands still", func(s *Setup) { s.Shooting.FallMM = 100 }},
		{"off a nozzle", "does not hang", func(s *Setup) { s.Shooting.NozzleMM = 2 }},
		{"a ball that is held", "only a hanging drop", func(s *Setup) { s.Drop.Body = flip.Ball }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := hangingSetup(3)
			c.change(&s)
			_, err := s.Plan()
			require.ErrorContains(t, err, c.want)
		})
	}
}

// A hanging drop's print may be asked for by its width, or by the sheets that there are.
func TestDistanceOfAHangingDropsPrint(t *testing.T) {
	s := hangingSetup(3.4)
	s.DistanceMM, s.Print = 0, Size{WidthMM: 400}
	p, err := s.Plan()
	require.NoError(t, err)
	require.InDelta(t, 400, p.Picture.WidthMM, 1)
	s.Print, s.MaxSheets = Size{}, 1
	p, err = s.Plan()
	require.NoError(t, err)
	require.Len(t, p.Sheets, 1)
	require.Greater(t, p.Picture.WidthMM, 150.0)
}
