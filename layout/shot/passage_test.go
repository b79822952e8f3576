package shot

import (
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// passing is the usual drop of water in a frame 54 x 36 mm, before a camera of 12,500 frames a second.
func passing(t *testing.T, change func(*layout.Setup)) Shot {
	return exposed(t, func(s *layout.Setup) {
		s.Camera.FrameWidthMM, s.Camera.FrameRate, s.Shooting.FallMM = 54, 12500, 200
		s.Material = "water"
		if change != nil {
			change(s)
		}
	})
}

// The drop is filmed from the frame in which its lower edge shows to the last that it has not all left, in the frame's
// middle in one of them; gravity by hand.
func TestPassageShowsAllOfTheDrop(t *testing.T) {
	const g, radiusMM = 9806.65, 2.5
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		drops  []layout.Point
		v      float64 // mm/s, as it passes
	}{
		{"falls", nil, nil, math.Sqrt(2 * g * 200)},
		{"rises", func(s *layout.Setup) { s.Shooting.FallMM, s.Shooting.SpeedMMPerS = 0, -2000 }, nil, -2000},
		{"two of them", nil, []layout.Point{{YMM: -6}, {YMM: 3}}, math.Sqrt(2 * g * 200)},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := passing(t, c.change)
			p, err := s.Passage(c.drops)
			require.NoError(t, err)
			drops := c.drops
			if drops == nil {
				drops = []layout.Point{{}}
			}
			shows := func(frame int) bool {
				seconds := float64(frame) / 12500
				ratio := math.Pow(0.9, -math.Sin(2*math.Pi*30.7*seconds)) // TestPassageSwings
				for _, at := range drops {
					y := at.YMM + c.v*seconds + g/2*seconds*seconds
					if math.Abs(y) <= s.Camera.FrameHeightMM/2+radiusMM*math.Cbrt(ratio*ratio) { // of the same volume
						return true
					}
				}
				return false
			}
			require.True(t, shows(p.First) && shows(p.Last) && !shows(p.First-1) && !shows(p.Last+1))
			require.Equal(t, p.Last-p.First+1, p.Frames())
			inPlace := p.At(-p.First)
			require.Equal(t, Moment{HeightOverWidth: 1, SpeedMMPerS: p.SpeedMMPerS}, inPlace)
			require.InEpsilon(t, c.v, inPlace.SpeedMMPerS, 1e-9)
			last := p.At(p.Frames() - 1)
			require.InDelta(t, c.v*last.TimeS+g/2*last.TimeS*last.TimeS, last.FallsMM, 1e-9)
			require.InDelta(t, c.v+g*last.TimeS, last.SpeedMMPerS, 1e-9)
		})
	}
}

// The frames with the drop's middle in view are those that the shot tells of.
func TestPassageHasTheFramesInView(t *testing.T) {
	s := passing(t, nil)
	p, err := s.Passage(nil)
	require.NoError(t, err)
	middle := 0
	for frame := range p.Frames() {
		if math.Abs(p.At(frame).FallsMM) <= s.Camera.FrameHeightMM/2 {
			middle++
		}
	}
	require.InDelta(t, s.Motion().FramesInView, middle, 1)
}

// A round drop swings a tenth either way, through round in its place; one that was planned out of round is just that
// there, and the other way half a swing later. Frames for a swing: root(8 x 0.0727 / (998.2 x 0.0025³)) / 2 pi = 30.7
// swings a second of water at 20 Celsius make 407.
func TestPassageSwings(t *testing.T) {
	const frames = 407.0
	at := func(s Shot, share float64) float64 {
		p, err := s.Passage(nil)
		require.NoError(t, err)
		return p.At(int(math.Round(share*frames)) - p.First).HeightOverWidth
	}
	round := passing(t, nil)
	for share, want := range map[float64]float64{0: 1, 0.25: 1 / 0.9, 0.5: 1, 0.75: 0.9, -0.25: 0.9} {
		require.InDelta(t, want, at(round, share), 2e-3, "%g of a swing", share)
	}
	pressed := passing(t, func(s *layout.Setup) { s.Drop.HeightOverWidth = 0.8 })
	for share, want := range map[float64]float64{0: 0.8, 0.25: 1, 0.5: 1.25, 1: 0.8} {
		require.InDelta(t, want, at(pressed, share), 5e-3, "%g of a swing", share)
	}
	unknown := passing(t, func(s *layout.Setup) { s.Material, s.Drop.HeightOverWidth = "", 0.9 })
	for _, share := range []float64{0, 0.25, 0.5} {
		require.Equal(t, 0.9, at(unknown, share), "a liquid that is not known keeps its shape")
	}
}

func TestPassageRefuses(t *testing.T) {
	for name, change := range map[string]func(*layout.Setup){
		"no speed": func(s *layout.Setup) { s.Shooting.FallMM = 0 },
		"no rate":  func(s *layout.Setup) { s.Camera.FrameRate = 0 },
	} {
		_, err := passing(t, change).Passage(nil)
		require.ErrorIs(t, err, ErrNotKnown, name)
	}
	_, err := passing(t, func(s *layout.Setup) { s.Shooting.FallMM = 5 }).Passage([]layout.Point{{YMM: 100}})
	require.ErrorContains(t, err, "never comes into the frame", "let go below it")
	_, err = passing(t, func(s *layout.Setup) { s.Shooting.FallMM = 5 }).Passage([]layout.Point{{YMM: -100}})
	require.NoError(t, err, "it comes by later")
	_, err = passing(t, func(s *layout.Setup) { s.Shooting.FallMM, s.Shooting.SpeedMMPerS = 0, -100 }).
		Passage([]layout.Point{{YMM: 100}})
	require.ErrorContains(t, err, "never comes into the frame")
	_, err = passing(t, func(s *layout.Setup) { s.Camera.FrameRate = 3 }).Passage([]layout.Point{{YMM: -150}})
	require.ErrorContains(t, err, "between two of them")
}

func TestHangingDropHasNoPassage(t *testing.T) {
	_, err := Of(layout.Plan{Drop: layout.Drop{Body: flip.Hanging}}).Passage(nil)
	require.ErrorContains(t, err, "stands still")
}
