package rehearsal

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// A circle that is drawn on the board becomes a word that the layout takes for that circle: of a flat print to the
// word's last digit; a bent print bends circles, and there the middle agrees and the size about.
func TestCircleDrawnOnTheBoard(t *testing.T) {
	address, _ := served(t)
	look := func(words []Word) []record {
		return asked(t, address, "look", question{Words: words, SidePx: 64, Draft: true})
	}
	for _, c := range []struct {
		name     string
		words    []Word
		withinMM float64 // of the middle
		sizeOff  float64 // share of the radius
	}{
		{"flat", usual, 0.5, 0.02},
		{"bent", append([]Word{{"look", "straight"}}, usual...), 1, 0.3},
		{"bent and turned", append([]Word{{"look", "straight"}, {"turn", "30"}}, usual...), 1, 0.3},
	} {
		t.Run(c.name, func(t *testing.T) {
			asked, err := read(c.words)
			require.NoError(t, err)
			_, _, plans, err := asked.Bench("", 60, 40)
			require.NoError(t, err)
			p := plans[0]
			for _, share := range []layout.Point{{XMM: 0.5, YMM: 0.5}, {XMM: 0.4, YMM: 0.55}, {XMM: 0.6, YMM: 0.4}} {
				drawn := circle{Words: c.words, XMM: share.XMM * p.Backdrop.WidthMM, YMM: share.YMM * p.Backdrop.HeightMM,
					RadiusMM: 15}
				got := askedOne(t, address, "place", drawn)
				require.Equal(t, "place", got.Kind, got.Text)
				var n [3]float64
				for i, part := range strings.Split(got.Avoid, ",") {
					n[i], err = strconv.ParseFloat(part, 64)
					require.NoError(t, err)
				}
				on := p.CircleOnBoard(n[0], n[1], n[2])
				what := fmt.Sprintf("%v drawn, %v kept", drawn, on)
				require.LessOrEqual(t, math.Hypot(on.Centre.XMM-drawn.XMM, on.Centre.YMM-drawn.YMM), c.withinMM, what)
				require.InEpsilon(t, drawn.RadiusMM, on.RadiusMM, c.sizeOff, what)
				after := look(append([]Word{{"avoid", got.Avoid}}, c.words...))
				require.NotEqual(t, "error", after[0].Kind, after[0].Text)
			}
		})
	}
	require.Equal(t, "error", askedOne(t, address, "place", circle{Words: []Word{{"distance", "1"}}}).Kind)
}
