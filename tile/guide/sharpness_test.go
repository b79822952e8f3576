package guide

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// The page on sharpness tells the plan's figures: a line for every stop, the three distances of the drawing,
// whether a stop holds, and the mains.
func TestSharpnessPage(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		says   []string
		not    []string
	}{
		{"ball, too close a frame", func(*layout.Setup) {},
			[]string{"f/16 (plan) 0 7.0 7.0 5.8 302", "No stop holds edge and picture within 2 pixels", "0.02 mm", "5.07 mm",
				"half the frame rate.", "the drop 120 pixels wide", "seen from the side"},
			[]string{"frames/s", "Along", "f/16 to"}},
		{"ball at 12,500 frames a second, easily pleased", func(s *layout.Setup) {
			s.Camera.FrameRate,
				s.Camera.SharpToPx = 12500, 8
		},
			[]string{"f/16 (plan) 0 12500 7.0", "f/22 –1 6250 8.2", "f/9.8 to f/21 hold edge and picture within 8 pixels",
				"125 frames on 50 Hz, 104 frames on 60 Hz", "6250 in place of 12500 frames a second"},
			[]string{"No stop holds", "would hold"}},
		{"upright rod at 25 frames a second", func(s *layout.Setup) { s.Drop.Body, s.Camera.FrameRate = flip.UprightRod, 25 },
			[]string{"along rod", "counts across the rod. Along it nothing is bent", "hardly ever sharp both ways",
				"4 pulses on 50 Hz, 4.8 pulses on 60 Hz",
				"seen from above"},
			[]string{"brightness swings"}},
		{"level rod", func(s *layout.Setup) { s.Drop.Body = flip.LevelRod },
			[]string{"Along it nothing is bent", "seen from the side"}, []string{"seen from above"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := usual()
			c.change(&s)
			doc := worded(t, jobOf(t, s))
			texts := pageTexts(doc)
			first, next := pageWith(t, texts, "Sharpness and exposure The"), pageWith(t, texts, "Light This")
			page, _, _ := strings.Cut(strings.Join(texts[first-1:next], " "), "Light This")
			for _, says := range c.says {
				require.Contains(t, page, says)
			}
			for _, not := range c.not {
				require.NotContains(t, page, not)
			}
			p, err := s.Plan()
			require.NoError(t, err)
			for _, stop := range shot.Of(p).Sharpness().Stops {
				require.Contains(t, page, shot.StopMark(stop.FNumber)+" ")
				require.Contains(t, page, fmt.Sprintf(" %.1f ", stop.Best.Blur.EdgePx))
			}
			requireNoWordsOverlap(t, doc)
		})
	}
}

// The drawing stays on its page and its words apart for drops that are large, strong, weak, or so close to
// the board that the picture hangs far before them.
func TestPlanesOfAnyDrop(t *testing.T) {
	for _, c := range []struct {
		name, paper string
		change      func(*layout.Setup)
	}{
		{"strong", "A6", func(s *layout.Setup) { s.Drop.Index, s.Fill = 3.5, 0.1 }},
		{"weak", "A4", func(s *layout.Setup) { s.Drop.Index = 1.05 }},
		{"large before a near camera", "A5", func(s *layout.Setup) { s.Drop.DiameterMM, s.CameraMM = 150, 250 }},
		{"a picture far before the drop", "A4", func(s *layout.Setup) {
			s.Drop.DiameterMM, s.DistanceMM, s.Fill = 20, 22,
				0.8
		}},
		{"closed far, a frame rate of many figures", "A4", func(s *layout.Setup) {
			s.Camera.FNumber, s.Camera.FrameRate, s.Drop.Body = 777, 123456789, flip.LevelRod
		}},
		{"a rod that needs much light", "A4", func(s *layout.Setup) {
			s.Camera.FrameRate, s.Shooting.ISO, s.Drop.Body = 25000, 400, flip.LevelRod
		}},
		{"a drop that needs much light", "A6", func(s *layout.Setup) {
			s.Camera.FrameRate, s.Shooting.ISO, s.Shooting.FallMM = 25000, 400, 200
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := on(t, c.paper)
			c.change(&s)
			requireNoWordsOverlap(t, worded(t, jobOf(t, s)))
		})
	}
}
