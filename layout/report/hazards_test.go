package report

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// Dangers are told where the job has them, and a line of them keeps within its columns.
func TestHazards(t *testing.T) {
	for _, c := range []struct {
		name     string
		drop     layout.Drop
		wideMM   float64
		has, not []Hazard
		care     string
	}{
		{"water", layout.Drop{Body: flip.Ball, Material: "water"}, 600, []Hazard{HotLamps, MainsByWater, Knives, SprayGlue,
			BoardDust, Flashes, Slips}, []Hazard{EthanolVapour, Glass, LargeBoard},
			"read the guide's cautions first: hot lamps near paper, mains near water"},
		{"ethanol", layout.Drop{Body: flip.Ball, Material: "ethanol"}, 600, []Hazard{EthanolVapour}, []Hazard{Glass},
			"read the guide's cautions first: ethanol vapour, hot lamps near paper"},
		{"a glass rod", layout.Drop{Body: flip.UprightRod, Material: "crown-glass"}, 600, []Hazard{Glass}, nil, ""},
		{"a tube of water", layout.Drop{Body: flip.LevelRod, Material: "water"}, 600, []Hazard{Glass}, nil, ""},
		{"an acrylic rod", layout.Drop{Body: flip.LevelRod, Material: "acrylic"}, 600, nil, []Hazard{Glass}, ""},
		{"a metre with its border", layout.Drop{Material: "water"}, 961, []Hazard{LargeBoard}, nil, ""},
		{"just below", layout.Drop{Material: "water"}, 959, nil, []Hazard{LargeBoard}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := layout.Plan{Drop: c.drop, Backdrop: layout.Backdrop{WidthMM: c.wideMM, HeightMM: 400}}
			got := Hazards(p)
			require.Subset(t, got, c.has)
			for _, h := range c.not {
				require.NotContains(t, got, h)
			}
			const columns = 72
			line := Care(p, columns)
			require.LessOrEqual(t, len(line), columns)
			if c.care != "" {
				require.Equal(t, c.care, line)
			}
		})
	}
}
