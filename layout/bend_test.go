package layout

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
)

// bentSetups are setups whose picture is not plain, by name.
func bentSetups() map[string]Setup {
	all := map[string]Setup{}
	add := func(name string, change func(*Setup)) {
		s := plain()
		s.DistanceMM, s.Fill = 300, 0.85
		change(&s)
		all[name] = s
	}
	add("straight", func(s *Setup) { s.Look = Straight })
	add("half straight", func(s *Setup) { s.Look = 0.5 })
	add("straight, inside", func(s *Setup) { s.Look, s.Fit = Straight, Inside })
	add("turned", func(s *Setup) { s.Framing.TurnDeg = 20 })
	add("turned, inside, straight", func(s *Setup) { s.Look, s.Fit, s.Framing.TurnDeg = Straight, Inside, -33 })
	add("off its middle", func(s *Setup) { s.Look, s.Framing.OffX, s.Framing.OffY = Straight, 0.1, -0.2 })
	add("off its middle, inside", func(s *Setup) {
		s.Look, s.Fit, s.Framing.OffX, s.Framing.OffY = Straight, Inside, 0.3,
			-0.2
	})
	add("round", func(s *Setup) { s.Framing.Round, s.Fill = true, 0.95 })
	add("upright rod", func(s *Setup) { s.Look, s.Drop.Body = Straight, flip.UprightRod })
	add("level rod, half", func(s *Setup) { s.Look, s.Drop.Body = 0.5, flip.LevelRod })
	add("upright rod, turned", func(s *Setup) { s.Look, s.Drop.Body, s.Framing.TurnDeg = Straight, flip.UprightRod, 10 })
	add("pressed flat", func(s *Setup) { s.Look, s.Drop.HeightOverWidth = Straight, 0.85 })
	add("drawn long, inside", func(s *Setup) { s.Look, s.Fit, s.Drop.HeightOverWidth = Straight, Inside, 1.15 })
	return all
}

// What is seen in the drop at a point of its plane is the picture's point in even proportion: worked out here
// from the fill's own outline and the trace, not from Hanging.
func TestStraightPicturesAreStraight(t *testing.T) {
	for name, setup := range bentSetups() {
		t.Run(name, func(t *testing.T) {
			p, err := setup.Plan()
			require.NoError(t, err)
			require.NoError(t, p.Check())
			h, s := p.Hang(), p.Sight()
			random := rand.New(rand.NewSource(3))
			halfWidthMM, halfHeightMM := s.OutlineMM()
			proportions := p.Picture.FlatWidthMM / p.Picture.FlatHeightMM
			sin, cos := math.Sincos(p.Picture.Framing.TurnDeg * math.Pi / 180)
			framePx, seen := 0.0, 0
			for range 4000 {
				// A point of the drop's plane within the fill, and what must show there: so many picture heights
				// from the point on the axis.
				u := p.Picture.Fill * math.Sqrt(random.Float64())
				sinA, cosA := math.Sincos(2 * math.Pi * random.Float64())
				x, y := u*cosA*min(halfWidthMM, 2*s.ApparentRadiusMM()), u*sinA*min(halfHeightMM, 2*s.ApparentRadiusMM())
				if s.ShareAt(x, y) > p.Picture.Fill*0.999 {
					continue
				}
				l, ok := s.Trace(s.PinholeRay(x, y))
				require.True(t, ok)
				shown := h.At(l.XMM+p.Backdrop.WidthMM/2, l.YMM+p.Backdrop.HeightMM/2)
				if shown.InsideMM < 0 {
					continue
				}
				seen++
				straight := Point{x * p.Picture.MadeFor.FlatPerDrop, y * p.Picture.MadeFor.FlatPerDrop}
				flat := turned(s.Drop, Point{l.XMM, l.YMM})
				share := float64(p.Picture.Look)
				at := Point{share*straight.XMM + (1-share)*flat.XMM, share*straight.YMM + (1-share)*flat.YMM}
				wantU := (at.XMM*cos+at.YMM*sin)/p.Picture.FlatHeightMM/proportions + 0.5 + p.Picture.Framing.OffX
				wantV := (at.YMM*cos-at.XMM*sin)/p.Picture.FlatHeightMM + 0.5 + p.Picture.Framing.OffY
				// As an error in the frame: flat mm, over the flat mm that a frame pixel shows.
				off := math.Hypot((shown.U-wantU)*p.Picture.FlatWidthMM, (shown.V-wantV)*p.Picture.FlatHeightMM)
				framePx = max(framePx, off/p.Picture.MadeFor.FlatPerDrop/p.Camera.PixelMM())
				// There and back.
				back, ok := h.Board(wantU, wantV)
				require.True(t, ok)
				require.InDelta(t, 0, math.Hypot(back.XMM-l.XMM-p.Backdrop.WidthMM/2, back.YMM-l.YMM-p.Backdrop.HeightMM/2), 1e-6)
			}
			require.Greater(t, seen, 500)
			require.Less(t, framePx, 1e-4, "the lattice's error, in frame pixels: measured, it is under half of that")
			t.Logf("worst %.2g frame pixels, %d sheets of %d cells", framePx, len(p.Sheets), p.Backdrop.Columns*p.Backdrop.Rows)
		})
	}
}

// A picture that covers leaves nothing of the fill empty; one that lies inside has all its corners in the
// fill, the furthest on it.
func TestBentFits(t *testing.T) {
	for name, setup := range bentSetups() {
		t.Run(name, func(t *testing.T) {
			p, err := setup.Plan()
			require.NoError(t, err)
			b := p.bent()
			furthest, nearest := 0.0, 1.0
			var size Size
			for _, e := range b.outline() {
				furthest, nearest = max(furthest, e.DropShare), min(nearest, e.DropShare)
				size.WidthMM, size.HeightMM = max(size.WidthMM, 2*math.Abs(e.At.XMM)), max(size.HeightMM, 2*math.Abs(e.At.YMM))
			}
			require.InDelta(t, p.Picture.Fill, furthest, 1e-6)
			if setup.Fit == Cover && setup.Drop.Body == flip.Ball {
				require.InDelta(t, p.Picture.Fill, nearest, 1e-6)
			}
			require.InDelta(t, size.WidthMM, p.Picture.WidthMM, 0.01)
			require.InDelta(t, size.HeightMM, p.Picture.HeightMM, 0.01)
		})
	}
}

// Each cell has a sheet exactly when picture falls on it, looked for on a fine raster of board places.
func TestSheetsCarryPicture(t *testing.T) {
	skipped := 0
	for name, setup := range bentSetups() {
		t.Run(name, func(t *testing.T) {
			setup.Paper, setup.DistanceMM = Paper{Name: "A5", WidthMM: 148, HeightMM: 210}, 250
			p, err := setup.Plan()
			require.NoError(t, err)
			h := p.Hang()
			carries := map[string]bool{}
			const step = 1.0
			for row := range p.Backdrop.Rows {
				for column := range p.Backdrop.Columns {
					for x := p.Backdrop.XEdgesMM[column] + step; x < p.Backdrop.XEdgesMM[column+1]-step/2; x += step {
						for y := p.Backdrop.YEdgesMM[row] + step; y < p.Backdrop.YEdgesMM[row+1]-step/2; y += step {
							if h.At(x, y).InsideMM > 0 {
								carries[sheetName(row+1, column+1)] = true
							}
						}
					}
				}
			}
			for _, s := range p.Sheets {
				delete(carries, s.Name)
			}
			require.Empty(t, carries, "picture without a sheet")
			skipped += p.Backdrop.Columns*p.Backdrop.Rows - len(p.Sheets)
			for _, s := range p.Sheets {
				seen := false
				for i := range 60 * 60 {
					x, y := s.Cell.XMM+(float64(i%60)+0.5)/60*s.Cell.WidthMM, s.Cell.YMM+(float64(i/60)+0.5)/60*s.Cell.HeightMM
					seen = seen || h.At(x, y).InsideMM > -1
				}
				require.True(t, seen, "%s carries nothing", s.Name)
			}
		})
	}
	require.Positive(t, skipped, "no setup leaves a cell bare")
}

func TestPrintSizeOfABentPicture(t *testing.T) {
	for name, setup := range bentSetups() {
		t.Run(name, func(t *testing.T) {
			p, err := setup.Plan()
			require.NoError(t, err)
			asked := setup
			asked.Print = p.Picture.Print()
			for _, free := range []string{"distance", "fill"} {
				s := asked
				if free == "distance" {
					s.DistanceMM = 0
				} else {
					s.Fill = 0
				}
				q, err := s.Plan()
				require.NoError(t, err, free)
				require.InDelta(t, p.Drop.DistanceMM, q.Drop.DistanceMM, 0.01, free)
				require.InDelta(t, p.Picture.Fill, q.Picture.Fill, 1e-4, free)
			}
			asked.Print.HeightMM *= 1.2
			_, err = asked.Plan()
			require.ErrorContains(t, err, "ask for that")
		})
	}
	s := plain()
	s.Look, s.MaxSheets = Straight, 6
	p, err := s.Plan()
	require.NoError(t, err)
	require.LessOrEqual(t, len(p.Sheets), 6)
	s.MaxSheets = 100
	p, err = s.Plan()
	require.NoError(t, err)
	require.LessOrEqual(t, len(p.Sheets), 100)
	require.Greater(t, p.Backdrop.Columns*p.Backdrop.Rows, 100, "cells without picture don't count")
	s.MaxSheets, s.DistanceMM, s.Fill = 0, p.Drop.DistanceMM*1.001, p.Picture.Fill
	q, err := s.Plan()
	require.NoError(t, err)
	require.Greater(t, len(q.Sheets), 100, "a larger print would have fitted")
}

func TestBentPlanComesBackFromAFile(t *testing.T) {
	for name, setup := range bentSetups() {
		t.Run(name, func(t *testing.T) {
			p, err := setup.Plan()
			require.NoError(t, err)
			text, err := json.Marshal(p)
			require.NoError(t, err)
			var q Plan
			require.NoError(t, json.Unmarshal(text, &q))
			require.Equal(t, p, q)
			require.NoError(t, q.Check())
			other, err := q.WithCamera(p.Camera.AsSetup(), p.Drop.CameraMM*1.5, nil)
			require.NoError(t, err)
			require.Equal(t, p.Picture.MadeFor, other.Picture.MadeFor, "another camera leaves the print as it is")
			require.Equal(t, p.bent(), other.bent())

			for what, spoil := range map[string]func(*Plan){
				"fill":    func(p *Plan) { p.Picture.MadeFor.Fill = 1.5 },
				"camera":  func(p *Plan) { p.Picture.MadeFor.CameraMM = math.Inf(1) },
				"scale":   func(p *Plan) { p.Picture.MadeFor.FlatPerDrop = -1 },
				"shape":   func(p *Plan) { p.Drop.HeightOverWidth = 3 },
				"turn":    func(p *Plan) { p.Picture.Framing.TurnDeg = math.NaN() },
				"off":     func(p *Plan) { p.Picture.Framing.OffX = 0.7 },
				"size":    func(p *Plan) { p.Picture.FlatWidthMM *= 1e-4; p.Picture.FlatHeightMM *= 1e-4 },
				"drop's":  func(p *Plan) { p.Picture.MadeFor.FlatPerDrop *= 1.01 },
				"print":   func(p *Plan) { p.Picture.WidthMM *= 0.99 },
				"missing": func(p *Plan) { p.Picture.MadeFor = nil; p.Picture.Look = Straight },
				"edges":   func(p *Plan) { p.Backdrop.XEdgesMM = p.Backdrop.XEdgesMM[1:] },
				"stretch": func(p *Plan) { p.Backdrop.Surround = Stretch },
			} {
				var q Plan
				require.NoError(t, json.Unmarshal(text, &q))
				spoil(&q)
				require.Error(t, q.Check(), what)
			}
		})
	}
}

func TestFramingRefused(t *testing.T) {
	for _, c := range []struct {
		name, want string
		change     func(*Setup)
	}{
		{"the axis on the very edge", "very edge", func(s *Setup) { s.Framing.OffX = 0.5 }},
		{"beyond the picture", "shares from 0 to 1", func(s *Setup) { s.Framing.OffY, s.Fit = -0.6, Inside }},
		{"turned too far", "-360 to 360", func(s *Setup) { s.Framing.TurnDeg = 400 }},
		{"round in a rod", "one way only", func(s *Setup) { s.Framing.Round, s.Drop.Body = true, flip.LevelRod }},
		{"round and inside", "corners", func(s *Setup) { s.Framing.Round, s.Fit = true, Inside }},
		{"a rod out of round", "only a ball", func(s *Setup) { s.Drop.HeightOverWidth, s.Drop.Body = 0.9, flip.LevelRod }},
		{"far too flat", "from 0.8 to 1.35", func(s *Setup) { s.Drop.HeightOverWidth = 0.5 }},
		{"a background and a surround", "one of them", func(s *Setup) { s.Background, s.Surround = "#000000", "#ffffff" }},
		{"a stretched background", "not a background", func(s *Setup) { s.Background = Stretch }},
		{"a stretched bent picture", "no edge", func(s *Setup) { s.Look, s.Surround = Straight, Stretch }},
		{"no look", "from 0", func(s *Setup) { s.Look = Look(math.NaN()) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			c.change(&s)
			_, err := s.Plan()
			require.ErrorContains(t, err, c.want)
		})
	}
}

func TestParseLook(t *testing.T) {
	for text, want := range map[string]Look{"bulged": 0, "Straight": 1, "0.5": 0.5, "0": 0, "1": 1} {
		got, err := ParseLook(text)
		require.NoError(t, err)
		require.Equal(t, want, got)
		again, err := ParseLook(got.String())
		require.NoError(t, err)
		require.Equal(t, want, again)
	}
	for _, text := range []string{"", "flat", "1.1", "-0.1", "NaN"} {
		_, err := ParseLook(text)
		require.ErrorContains(t, err, fmt.Sprintf("%q", text))
	}
}

// With a background the board is what the drop sees at the fill, and every cell has a sheet.
func TestBackground(t *testing.T) {
	s := plain()
	s.DistanceMM, s.Fill, s.Fit, s.Background = 300, 0.85, Inside, "#102030"
	p, err := s.Plan()
	require.NoError(t, err)
	reachMM, _ := p.Sight().ReachMM(0.85)
	require.InDelta(t, 2*reachMM, p.Backdrop.WidthMM, 1e-9)
	require.InDelta(t, 2*reachMM, p.Backdrop.HeightMM, 1e-9)
	require.Less(t, p.Picture.HeightMM, p.Backdrop.HeightMM)
	require.Len(t, p.Sheets, p.Backdrop.Columns*p.Backdrop.Rows)
	require.NoError(t, p.Check())

	// A bent picture's background fills the sheets that the fill reaches, and no others.
	s.Look, s.DistanceMM, s.Paper = Straight, 900, Paper{Name: "A6", WidthMM: 105, HeightMM: 148}
	p, err = s.Plan()
	require.NoError(t, err)
	require.NoError(t, p.Check())
	reachMM, _ = p.Sight().ReachMM(0.85)
	cells := p.Backdrop.Columns * p.Backdrop.Rows
	require.Less(t, len(p.Sheets), cells)
	has := map[string]bool{}
	for _, sheet := range p.Sheets {
		has[sheet.Name] = true
	}
	for row := range p.Backdrop.Rows {
		for column := range p.Backdrop.Columns {
			// The point of the cell that is nearest to the axis.
			x := max(p.Backdrop.XEdgesMM[column], min(p.Backdrop.WidthMM/2, p.Backdrop.XEdgesMM[column+1])) -
				p.Backdrop.WidthMM/2
			y := max(p.Backdrop.YEdgesMM[row], min(p.Backdrop.HeightMM/2, p.Backdrop.YEdgesMM[row+1])) - p.Backdrop.HeightMM/2
			if away := math.Hypot(x, y); math.Abs(away-reachMM) > 1 {
				require.Equal(t, away < reachMM, has[sheetName(row+1, column+1)], "R%dC%d", row+1, column+1)
			}
		}
	}
}

// A round subject in a drop out of round is whole: a circle to the drop's shorter axis.
func TestRoundInADropOutOfRound(t *testing.T) {
	for _, k := range []float64{0.85, 1.15} {
		s := plain()
		s.Look, s.Framing.Round, s.Drop.HeightOverWidth, s.Proportions = Straight, true, k, 1
		p := mustPlan(t, s)
		require.NoError(t, p.Check())
		require.LessOrEqual(t, p.Picture.Fill, RoundFill)
		require.Greater(t, p.Picture.Fill, 0.9)
		halfWidthMM, halfHeightMM := p.Sight().OutlineMM()
		radiusMM := p.Picture.Fill * min(halfWidthMM, halfHeightMM)
		for _, e := range p.bent().outline() {
			x, y, ok := p.Sight().SeenThrough(e.At.XMM, e.At.YMM)
			require.True(t, ok)
			require.InDelta(t, radiusMM, math.Hypot(x, y), 1e-6, "a circle in the drop")
		}
	}
}

// A camera so near that the drop's rim sees less than the print: the print outgrows the drop.
func TestWithCameraTooNearForThePrint(t *testing.T) {
	s := plain()
	s.Fill = 0.99
	p := mustPlan(t, s)
	c := p.Camera.AsSetup()
	c.LensMM, c.FrameWidthMM = 0, 20
	q, err := p.WithCamera(c, 8, nil)
	require.NoError(t, err)
	rimMM, ok := q.Sight().ReachMM(1)
	require.True(t, ok)
	require.Less(t, rimMM, p.Picture.ReachMM)
	require.Equal(t, 1.0, q.Picture.Fill)
	require.Equal(t, p.Sheets, q.Sheets)
}

// Another shape tried on a job leaves the print as it is, and the drop shows it out of true.
func TestWithShape(t *testing.T) {
	s := plain()
	s.Look = Straight
	p := mustPlan(t, s)
	q, err := p.WithShape(0.9)
	require.NoError(t, err)
	q, err = q.WithCamera(p.Camera.AsSetup(), p.Drop.CameraMM, nil)
	require.NoError(t, err)
	require.NoError(t, q.Check())
	require.Equal(t, p.bent(), q.bent())
	require.True(t, q.Sight().Drop.Oblate())
	_, err = p.WithShape(2)
	require.ErrorContains(t, err, "0.8 to 1.35")
}
