package layout

import (
	"encoding/json"
	"math"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

func TestPlanReadsBack(t *testing.T) {
	want := mustPlan(t, plain())
	text, err := json.Marshal(want)
	require.NoError(t, err)
	var got Plan
	require.NoError(t, json.Unmarshal(text, &got))
	require.Equal(t, want, got, "a plan survives being written out")
	require.NoError(t, got.Check())
}

func TestCheckFindsWhatIsBroken(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*Plan)
	}{
		{"no sheets", func(p *Plan) { p.Sheets = nil }},
		{"columns without end", func(p *Plan) { p.Backdrop.Columns = math.MaxInt }},
		{"a sheet twice", func(p *Plan) { p.Sheets[1] = p.Sheets[0] }},
		{"a sheet in another's place", func(p *Plan) {
			last := len(p.Sheets) - 1
			p.Sheets[last] = p.Sheets[0]
			p.Sheets[last].Page = last + 1
		}},
		{"a print too small to be cut", func(p *Plan) { p.Picture.WidthMM, p.Backdrop.WidthMM = 0.003, 0.003 }},
		{"a cell moved", func(p *Plan) { p.Sheets[3].Cell.XMM += 0.01 }},
		{"a cell that is NaN", func(p *Plan) { p.Sheets[0].Cell.WidthMM = math.NaN() }},
		{"a cell off its page", func(p *Plan) { p.Sheets[0].OnPage.XMM = -300 }},
		{"a page out of order", func(p *Plan) { p.Sheets[0].Page = 2 }},
		{"a name of another", func(p *Plan) { p.Sheets[0].Name = "R2C2" }},
		{"a backdrop that outgrew its cells", func(p *Plan) { p.Backdrop.WidthMM++; p.Picture.WidthMM++ }},
		{"no index", func(p *Plan) { p.Drop.Index = 0 }},
		{"a reversal that the optics deny", func(p *Plan) { p.Drop.Reverses = flip.ReversesX }},
		{"an orientation unknown", func(p *Plan) { p.Backdrop.Orientation = "auto" }},
		{"a corner unknown", func(p *Plan) { p.Backdrop.LightFrom = "behind" }},
		{"a frame without pixels", func(p *Plan) { p.Camera.HeightPx = 0 }},
		{"a fill of 1", func(p *Plan) { p.Picture.Fill = 1 }},
		{"a fill of 0", func(p *Plan) { p.Picture.Fill = 0 }},
		{"a fill of next to nothing", func(p *Plan) { p.Picture.Fill = 5e-324 }},
		{"a reach near the axis below 0", func(p *Plan) { p.Picture.NearAxisReachMM = -80 }},
		{"a reach near the axis without end", func(p *Plan) { p.Picture.NearAxisReachMM = 1e308 }},
		{"an f-number of 0", func(p *Plan) { p.Camera.FNumber = 0 }},
		{"a frame rate below 0", func(p *Plan) { p.Camera.FrameRate = -1 }},
		{"no blur that passes for sharp", func(p *Plan) { p.Camera.SharpToPx = 0 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := mustPlan(t, plain())
			require.NoError(t, p.Check())
			c.spoil(&p)
			require.Error(t, p.Check())
		})
	}
}

// What a setup may not ask for, a plan that was read back may not hold: each is refused for the setup's own reason.
func TestCheckKeepsTheBoundsOfASetup(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*Plan)
		says  string
	}{
		// What follows from the index is made to agree, so that the bound alone is left to refuse it: nR / 2(n - 1), which
		// is R/2 for an index without end.
		{"an index that nothing has", func(p *Plan) { p.Drop.Index, p.Drop.FocalLengthMM = 1e300, p.Drop.DiameterMM/4 },
			"a refractive index of 1e+300 can't be"},
		{"an index just above the highest", func(p *Plan) { p.Drop.Index = 4.01 }, "a refractive index of 4.01 can't be"},
		{"a focal length of another drop", func(p *Plan) { p.Drop.FocalLengthMM = p.Drop.DistanceMM }, "focal length is"},
		{"a lap too narrow to glue", func(p *Plan) { p.Backdrop.LapMM = 1 }, "a lap of 1mm can't be"},
		{"a margin below 0", func(p *Plan) { p.Backdrop.MarginMM = -1 }, "a margin of -1mm can't be"},
		{"a margin without end", func(p *Plan) { p.Backdrop.MarginMM = 1e300 }, "a margin of 1e+300mm can't be"},
		{"a board in the drop's focal length", func(p *Plan) { p.Drop.DistanceMM, p.Drop.Reverses = 4, flip.ReversesNone },
			"a backdrop 4mm from the drop's centre is too close"},
		{"a camera in the drop's focal length", func(p *Plan) { p.Drop.CameraMM = 4 }, "sees nothing inverted"},
		{"a picture like a thread", func(p *Plan) { p.Picture.FlatWidthMM = 1000 * p.Picture.FlatHeightMM },
			"times as wide as high can't be laid out"},
		{"a look of another kind", func(p *Plan) { p.Picture.Look = 2 }, "a look of 2 can't be"},
		{"a rod's picture that is round", func(p *Plan) { p.Drop.Body, p.Picture.Framing.Round = flip.UprightRod, true },
			"leave out --round"},
		{"a lens longer than the camera is far", func(p *Plan) { p.Camera.LensMM = 300 }, "can't focus on a drop"},
		{"a travel without end", func(p *Plan) { p.Drop.TravelMM = 1e300 }, "a travel of 1e+300mm can't be"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := mustPlan(t, plain())
			c.spoil(&p)
			require.ErrorContains(t, p.Check(), c.says)
		})
	}
}

// A print may be a hundredth off the picture's proportions, so the longest picture's plan may be a little longer.
func TestCheckTakesTheLongestPicture(t *testing.T) {
	for _, longer := range []float64{1 - 0.9*proportionsAgree, 1, 1 + 0.9*proportionsAgree} {
		s := plain()
		s.Proportions, s.Print = mostProportions, Size{mostProportions * 20 * longer, 20}
		require.NoError(t, mustPlan(t, s).Check(), "%g times", longer)
	}
}
