package shot

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// A picture as long as is told takes no more sheets, and uses their whole length or all that the frame sees: it is laid
// out anew by a setup that asks for it.
func TestRibbonUsesTheSheets(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
	}{
		{"straight", func(*layout.Setup) {}},
		{"level", func(s *layout.Setup) { s.Drop.Body = flip.LevelRod }},
		{"to an eye", func(s *layout.Setup) { s.Camera = layout.Eye() }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			s.Drop, s.Look, s.DistanceMM = flip.Drop{Body: flip.UprightRod, DiameterMM: 20, Index: 1.5168}, layout.Straight, 300
			s.Orientation = layout.Landscape
			c.change(&s)
			if s.Drop.Body == flip.LevelRod {
				s.Orientation = layout.Portrait
			}
			before := mustPlan(t, s)
			r, ok := Of(before).Ribbon()
			require.True(t, ok)
			long := func(w, h float64) float64 { return h / w }
			if s.Drop.Body == flip.LevelRod {
				long = func(w, h float64) float64 { return w / h }
			}
			require.InDelta(t, long(1.5, 1), r.PlannedAs, 1e-9, "as the setup asked")
			told := 0.999 * r.LongOverAcross // rounded down
			s.Proportions = 1 / told
			if s.Drop.Body == flip.LevelRod {
				s.Proportions = told
			}
			after := mustPlan(t, s)
			require.Len(t, after.Sheets, len(before.Sheets))
			alongMM, seesMM, sheetMM := after.Picture.HeightMM, after.Sees().HeightMM, 210.0
			if s.Drop.Body == flip.LevelRod {
				alongMM, seesMM = after.Picture.WidthMM, after.Sees().WidthMM
			}
			usesMM := math.Min(seesMM, sheetMM-2*(5+6)) // margin and strip on each side
			require.InDelta(t, usesMM, alongMM, 0.002*usesMM)
			require.Equal(t, usesMM == seesMM, r.AsTheFrameAllows)
		})
	}
	_, ok := Of(mustPlan(t, plain())).Ribbon()
	require.False(t, ok, "a ball")
	s := plain()
	s.Drop, s.DistanceMM = flip.Drop{Body: flip.UprightRod, DiameterMM: 20, Index: 1.5168}, 300
	_, ok = Of(mustPlan(t, s)).Ribbon()
	require.False(t, ok, "bulged, it is longer than the frame sees")
}
