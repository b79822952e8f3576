package layout

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// plain is a setup with the usual figures.
func plain() Setup {
	a4, _ := ParsePaper("A4")
	return Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300,
		Fit: Cover, Proportions: 1.5, Paper: a4, Orientation: Auto, MarginMM: 5, LapMM: 10, LightFrom: TopLeft,
		Camera: CameraSetup{Sensor: Size{36, 24}, WidthPx: 6000, HeightPx: 4000, LensMM: 100, FNumber: 16, Focus: FocusBest},
	}
}

// wide is a setup whose frame sees past the board: 400 mm wide at the drop.
func wide() Setup {
	s := plain()
	s.DistanceMM = 400
	s.Camera.LensMM, s.Camera.FrameWidthMM = 0, 400
	return s
}

func mustPlan(t *testing.T, s Setup) Plan {
	t.Helper()
	p, err := s.Plan()
	require.NoError(t, err)
	return p
}

func TestAnyTwoGiveTheThird(t *testing.T) {
	s := plain()
	s.DistanceMM, s.Fill = 400, 0.8
	want := mustPlan(t, s)
	print := want.Picture.Print()
	for _, c := range []struct {
		name           string
		distanceMM     float64
		print          Size
		fill           float64
		wantD, wantF   float64
		wantPrintWidth float64
	}{
		{"print and fill", 0, print, 0.8, 400, 0.8, print.WidthMM},
		{"print and distance", 400, print, 0, 400, 0.8, print.WidthMM},
		{"all three, agreeing", 400, print, 0.8, 400, 0.8, print.WidthMM},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			s.DistanceMM, s.Print, s.Fill = c.distanceMM, c.print, c.fill
			p := mustPlan(t, s)
			require.InEpsilon(t, c.wantD, p.Drop.DistanceMM, 1e-9)
			require.InEpsilon(t, c.wantF, p.Picture.Fill, 1e-9)
			require.InEpsilon(t, c.wantPrintWidth, p.Picture.WidthMM, 1e-9)
		})
	}
	t.Run("print alone keeps the usual fill", func(t *testing.T) {
		s := plain()
		s.Print = print
		p := mustPlan(t, s)
		require.Equal(t, DefaultFill, p.Picture.Fill)
		reach, ok := p.Sight().ReachMM(DefaultFill)
		require.True(t, ok)
		require.InEpsilon(t, print.HeightMM/2, reach, 1e-9)
	})
	t.Run("three that disagree", func(t *testing.T) {
		s := plain()
		s.DistanceMM, s.Print, s.Fill = 400, print, 0.9
		_, err := s.Plan()
		require.ErrorContains(t, err, "disagree")
		require.ErrorContains(t, err, "give a fill of 0.800")
	})
}

func TestFit(t *testing.T) {
	for _, c := range []struct {
		name string
		fit  Fit
		half func(w, h float64) float64
	}{
		{"cover: the shorter half-side", Cover, func(w, h float64) float64 { return min(w, h) / 2 }},
		{"inside: the half-diagonal", Inside, func(w, h float64) float64 { return math.Sqrt(w*w+h*h) / 2 }},
	} {
		for _, proportions := range []float64{0.6, 1, 1.5} {
			t.Run(c.name, func(t *testing.T) {
				s := plain()
				s.Fit, s.Proportions = c.fit, proportions
				p := mustPlan(t, s)
				reach, ok := p.Sight().ReachMM(DefaultFill)
				require.True(t, ok)
				require.InEpsilon(t, reach, c.half(p.Picture.WidthMM, p.Picture.HeightMM), 1e-9)
				require.InEpsilon(t, proportions, p.Picture.WidthMM/p.Picture.HeightMM, 1e-9)
			})
		}
	}
}

// A rod's reach is across its axis: the picture's side there takes up the fill.
func TestFitOfARod(t *testing.T) {
	for _, c := range []struct {
		body flip.Body
		half func(p Plan) float64
	}{
		{flip.UprightRod, func(p Plan) float64 { return p.Picture.WidthMM / 2 }},
		{flip.LevelRod, func(p Plan) float64 { return p.Picture.HeightMM / 2 }},
	} {
		for _, fit := range []Fit{Cover, Inside} {
			for _, proportions := range []float64{0.6, 1.5} {
				t.Run(fmt.Sprint(c.body, " ", fit, " ", proportions), func(t *testing.T) {
					s := plain()
					s.Drop.Body, s.Fit, s.Proportions = c.body, fit, proportions
					p := mustPlan(t, s)
					reach, ok := p.Sight().ReachMM(DefaultFill)
					require.True(t, ok)
					require.InEpsilon(t, reach, c.half(p), 1e-9)
				})
			}
		}
	}
}

// The largest print that N sheets hold takes N sheets or fewer, and one that is a thousandth larger does not fit.
func TestMaxSheetsIsTheLargest(t *testing.T) {
	for n := 1; n <= 40; n++ {
		s := plain()
		s.MaxSheets = n
		p := mustPlan(t, s)
		require.LessOrEqual(t, len(p.Sheets), n)
		require.InDelta(t, DefaultFill, p.Picture.Fill, 1e-9)
		larger := plain()
		larger.MaxSheets, larger.Fill, larger.Print = n, DefaultFill,
			Size{p.Picture.WidthMM * 1.001, p.Picture.HeightMM * 1.001}
		_, err := larger.Plan()
		require.ErrorContains(t, err, "are allowed", "%d sheets", n)
	}
	s := plain()
	s.MaxSheets, s.DistanceMM = 12, 300
	p := mustPlan(t, s)
	require.Equal(t, 300.0, p.Drop.DistanceMM)
	require.LessOrEqual(t, len(p.Sheets), 12)
	require.NotEqual(t, DefaultFill, p.Picture.Fill)
}

// What every plan must hold, on wild setups: cells tile the board without gap or overlap, fit their pages
// with strips and laps, sheets are pasted onto laps already down, and no fewer sheets would do.
func TestPlanProperties(t *testing.T) {
	const seed = 22
	random := rand.New(rand.NewSource(seed))
	papers := []string{"A4", "A3", "A5", "letter", "13x19in", "JIS-B4", "300x420mm"}
	corners := []Corner{TopLeft, TopRight, BottomLeft, BottomRight}
	for i := range 800 {
		s := plain()
		s.Paper, _ = ParsePaper(papers[random.Intn(len(papers))])
		s.Orientation = []Orientation{Auto, Portrait, Landscape}[random.Intn(3)]
		s.LightFrom = corners[random.Intn(4)]
		s.MarginMM, s.LapMM = 12*random.Float64(), minLapMM+15*random.Float64()
		s.DistanceMM, s.Fill = 50+900*random.Float64(), 0.3+0.6*random.Float64()
		s.Proportions = 0.3 + 3*random.Float64()
		p, err := s.Plan()
		if err != nil {
			require.ErrorContains(t, err, "sheets of", "seed %d, case %d", seed, i)
			continue
		}
		b := p.Backdrop
		require.Len(t, p.Sheets, b.Columns*b.Rows)
		area, page := 0.0, b.Page()
		done := map[[2]int]bool{}
		for k, sheet := range p.Sheets {
			require.Equal(t, k+1, sheet.Page)
			area += sheet.Cell.WidthMM * sheet.Cell.HeightMM
			used := b.OnPage(sheet).Used
			require.GreaterOrEqual(t, used.XMM, s.MarginMM-1e-6, "seed %d, case %d", seed, i)
			require.GreaterOrEqual(t, used.YMM, s.MarginMM-1e-6)
			require.LessOrEqual(t, used.RightMM(), page.WidthMM-s.MarginMM+1e-6)
			require.LessOrEqual(t, used.BottomMM(), page.HeightMM-s.MarginMM+1e-6)

			left, top, right, bottom := b.Cut(sheet)
			if b.Uncut {
				require.Len(t, p.Sheets, 1)
				require.False(t, left || top || right || bottom)
				continue
			}
			// On a side that is cut and not the board's edge, the neighbour must already be down.
			for _, side := range []struct {
				cut         bool
				column, row int
			}{{left, -1, 0}, {right, 1, 0}, {top, 0, -1}, {bottom, 0, 1}} {
				n := [2]int{sheet.Column + side.column, sheet.Row + side.row}
				onBoard := n[0] >= 1 && n[0] <= b.Columns && n[1] >= 1 && n[1] <= b.Rows
				if onBoard {
					require.Equal(t, side.cut, done[n], "seed %d, case %d: %s and its neighbour %v", seed, i, sheet.Name, n)
				} else {
					require.True(t, side.cut, "the board's outer edge is cut")
				}
			}
			done[[2]int{sheet.Column, sheet.Row}] = true
		}
		require.InEpsilon(t, b.WidthMM*b.HeightMM, area, 1e-9, "seed %d, case %d", seed, i)
		require.Len(t, p.Seams, (b.Columns-1)*b.Rows+(b.Rows-1)*b.Columns)
		require.NoError(t, p.Check(), "seed %d, case %d", seed, i)
	}
}

// Fewest sheets against brute force: every count of columns and rows, each way round, and one sheet that is not cut.
func TestFewestSheets(t *testing.T) {
	const seed = 23
	random := rand.New(rand.NewSource(seed))
	for i := range 300 {
		s := plain()
		s.DistanceMM, s.Proportions = 60+700*random.Float64(), 0.4+2*random.Float64()
		p := mustPlan(t, s)
		fewest := math.MaxInt
		for _, side := range [][2]float64{{210, 297}, {297, 210}} {
			if side[0]-10 >= p.Picture.WidthMM && side[1]-10 >= p.Picture.HeightMM {
				fewest = 1
			}
			for columns := 1; columns < 40; columns++ {
				for rows := 1; rows < 40; rows++ {
					// A sheet loses two margins of 5 mm and a strip of 6 mm, and then a lap of 10 mm or, at the
					// far edge, a strip more.
					w := float64(columns)*(side[0]-10-6-10) + 4
					h := float64(rows)*(side[1]-10-6-10) + 4
					if w >= p.Picture.WidthMM && h >= p.Picture.HeightMM {
						fewest = min(fewest, columns*rows)
					}
				}
			}
		}
		require.Equal(t, fewest, len(p.Sheets), "seed %d, case %d: %.1fx%.1f", seed, i, p.Picture.WidthMM, p.Picture.HeightMM)
	}
}

func TestSetupRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name   string
		change func(*Setup)
		says   string
	}{
		{"drop of nothing", func(s *Setup) { s.Drop.DiameterMM = 0 }, "diameter"},
		{"negative drop", func(s *Setup) { s.Drop.DiameterMM = -5 }, "diameter"},
		{"NaN drop", func(s *Setup) { s.Drop.DiameterMM = nan }, "diameter"},
		{"index 1", func(s *Setup) { s.Drop.Index = 1 }, "above 1"},
		{"index NaN", func(s *Setup) { s.Drop.Index = nan }, "above 1"},
		{"index absurd", func(s *Setup) { s.Drop.Index = 13.33 }, "up to 4"},
		{"camera at the drop", func(s *Setup) { s.CameraMM = 0 }, "camera distance"},
		{"camera in the drop", func(s *Setup) { s.CameraMM = 2 }, "move it further"},
		{"infinite distance", func(s *Setup) { s.DistanceMM = inf }, "distance"},
		{"negative distance", func(s *Setup) { s.DistanceMM = -1 }, "distance"},
		{"inside the focal length", func(s *Setup) { s.DistanceMM = 5 }, "does not turn the picture over"},
		{"fill 1", func(s *Setup) { s.Fill = 1 }, "fill"},
		{"fill negative", func(s *Setup) { s.Fill = -0.1 }, "fill"},
		{"fill NaN", func(s *Setup) { s.Fill = nan }, "fill"},
		{"print NaN", func(s *Setup) { s.Print = Size{nan, 100} }, "print's width"},
		{"print that stretches", func(s *Setup) { s.Print = Size{300, 300} }, "print it 300x200mm or 450x300mm"},
		{"print beyond the rim's view", func(s *Setup) { s.Print, s.DistanceMM = Size{6000, 4000}, 100 }, "even at its rim"},
		{"a print too small to be cut", func(s *Setup) { s.Fill = 1e-5 }, "too small to be cut out"},
		{"sheets without end", func(s *Setup) { s.MaxSheets = math.MaxInt }, "allow 1 to 10000"},
		{"proportions 0", func(s *Setup) { s.Proportions = 0 }, "wide as high"},
		{"margins that leave no cell", func(s *Setup) { s.MarginMM = 100 }, "leaves"},
		{"margin negative", func(s *Setup) { s.MarginMM = -1 }, "margin"},
		{"lap that leaves no cell", func(s *Setup) { s.LapMM = 180 }, "leaves"},
		{"a lap just too narrow", func(s *Setup) { s.LapMM = 2.99 }, "a lap of 2.99mm"},
		{"lap of nothing", func(s *Setup) { s.LapMM = 0 }, "lap"},
		{"too many sheets", func(s *Setup) { s.DistanceMM = 9000 }, "more than 500"},
		{"more than allowed", func(s *Setup) { s.DistanceMM, s.Fill, s.MaxSheets = 400, 0.85, 3 }, "3 are allowed"},
		{"lens longer than the camera distance", func(s *Setup) { s.Camera.LensMM = 400 }, "can't focus"},
		{"no pixels", func(s *Setup) { s.Camera.WidthPx = 0 }, "pixels"},
		{"sensor of nothing", func(s *Setup) { s.Camera.Sensor.WidthMM = 0 }, "sensor"},
		{"frame NaN", func(s *Setup) { s.Camera.FrameWidthMM = nan }, "frame"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			c.change(&s)
			_, err := s.Plan()
			require.ErrorContains(t, err, c.says)
		})
	}
}

func TestMoreSheetsByName(t *testing.T) {
	s := plain()
	s.DistanceMM, s.Fill, s.MaxSheets = 4000, 0.85, 2000
	p := mustPlan(t, s)
	require.Greater(t, len(p.Sheets), 500)
}

// Given all three, a print may be half a per cent off what distance and fill ask for, and no more.
func TestHowCloselyTheThreeMustAgree(t *testing.T) {
	s := plain()
	s.DistanceMM, s.Fill = 400, 0.8
	exact := mustPlan(t, s).Picture.Print()
	for _, c := range []struct {
		larger float64
		ok     bool
	}{{0.996, true}, {1.004, true}, {0.994, false}, {1.006, false}} {
		s.Print = Size{exact.WidthMM * c.larger, exact.HeightMM * c.larger}
		_, err := s.Plan()
		require.Equal(t, c.ok, err == nil, "%g times as large: %v", c.larger, err)
	}
}

// At the fill of a round subject a drop of water lets seven tenths of the light through. By hand: sin i =
// 0.95 is 71.81 degrees, sin r = 0.95/1.333 is 45.46, and a face throws back sin²(i-r)/sin²(i+r) = 0.249 of
// light across the plane of incidence and tan²(i-r)/tan²(i+r) = 0.065 of light in it (Fresnel; Hecht, Optics,
// 4.6.2). Through two faces that leaves 0.751 of 0.751 and 0.935 of 0.935, 0.719 in the mean.
func TestRoundFillIsWhereLightComesThrough(t *testing.T) {
	s := plain()
	s.Framing.Round = true
	p := mustPlan(t, s)
	l, ok := p.Sight().Trace(p.Sight().PinholeRay(p.Picture.Fill*p.Sight().ApparentRadiusMM(), 0))
	require.True(t, ok)
	require.InDelta(t, 0.719, l.Transmittance, 0.005)
}
