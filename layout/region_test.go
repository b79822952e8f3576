package layout

import (
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

func TestCutToFill(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Setup)
		cut    bool
	}{
		{"plain: the whole print is there", func(*Setup) {}, false},
		{"straight", func(s *Setup) { s.Look = Straight }, true},
		{"straight, inside", func(s *Setup) { s.Look, s.Fit = Straight, Inside }, false},
		{"turned", func(s *Setup) { s.Framing.TurnDeg = 20 }, true},
		{"turned, inside", func(s *Setup) { s.Framing.TurnDeg, s.Fit = 20, Inside }, false},
		{"round", func(s *Setup) { s.Framing.Round = true }, false},
		{"a straight rod: from side to side", func(s *Setup) {
			s.Look, s.Drop.Body = Straight, flip.UprightRod
		}, false},
		{"a turned rod: its corners", func(s *Setup) {
			s.Look, s.Drop.Body, s.Framing.TurnDeg = Straight, flip.UprightRod, 20
		}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			c.change(&s)
			require.Equal(t, c.cut, mustPlan(t, s).CutToFill())
		})
	}
}
