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
			last := len(p.Sheets) -
				1
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
	} {
		t.Run(c.name, func(t *testing.T) {
			p := mustPlan(t, plain())
			require.NoError(t, p.Check())
			c.spoil(&p)
			require.Error(t, p.Check())
		})
	}
}
