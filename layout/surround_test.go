package layout

import (
	"image/color"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParseSurround(t *testing.T) {
	for _, c := range []struct {
		word string
		want Surround
	}{{"stretch", Stretch}, {" #203040 ", "#203040"}, {"#A0B0C0", "#a0b0c0"}, {"Navy", "#000080"}, {"gray", "#808080"}} {
		got, err := ParseSurround(c.word)
		require.NoError(t, err)
		require.Equal(t, c.want, got)
	}
	for _, word := range []string{"", "#20304", "#2030405", "203040", "#20304g", "mauvish", "stretched"} {
		_, err := ParseSurround(word)
		require.ErrorContains(t, err, "#203040", word)
	}
	c, ok := Surround("#20a0ff").Colour()
	require.True(t, ok)
	require.Equal(t, color.RGBA{0x20, 0xa0, 0xff, 0xff}, c)
	_, ok = Stretch.Colour()
	require.False(t, ok)
}

func TestSurroundedBoard(t *testing.T) {
	plainPlan := mustPlan(t, wide())
	for _, c := range []struct {
		name string
		size Size
		want Size
	}{
		{"to a size", Size{1300, 900}, Size{1300, 900}},
		// 400 x 266.7 mm at the drop is 933.3 x 622.2 mm at the board; the f/16 pupil blurs its edge over some
		// millimetres more (TestCoverageAgainstTheTrace).
		{"until the frame is filled", Size{}, Size{math.Ceil(plainPlan.Covers().WidthMM),
			math.Ceil(plainPlan.Covers().HeightMM)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := wide()
			s.Surround, s.SurroundSize = "#203040", c.size
			p := mustPlan(t, s)
			require.NoError(t, p.Check())
			require.Equal(t, c.want, Size{p.Backdrop.WidthMM, p.Backdrop.HeightMM})
			require.Equal(t, plainPlan.Picture, p.Picture, "the picture stays as it was")
			covers := p.Covers()
			require.GreaterOrEqual(t, p.Backdrop.WidthMM, covers.WidthMM)
			require.GreaterOrEqual(t, p.Backdrop.HeightMM, covers.HeightMM)
			on := p.PictureOnBoard()
			require.InDelta(t, on.XMM, p.Backdrop.WidthMM-on.RightMM(), 1e-9, "the picture lies in the middle")
			require.InDelta(t, on.YMM, p.Backdrop.HeightMM-on.BottomMM(), 1e-9)
			area := 0.0
			for _, sheet := range p.Sheets {
				area += sheet.Cell.WidthMM * sheet.Cell.HeightMM
			}
			require.InEpsilon(t, c.want.WidthMM*c.want.HeightMM, area, 1e-9)
		})
	}
	t.Run("where the picture fills the frame by itself, none is added", func(t *testing.T) {
		s := plain()
		s.Surround = Stretch
		p := mustPlan(t, s)
		require.Equal(t, p.Backdrop.Board(), p.PictureOnBoard())
		require.NoError(t, p.Check())
	})
}

func TestSurroundRefused(t *testing.T) {
	for _, c := range []struct {
		name     string
		surround Surround
		size     Size
		says     string
	}{
		{"a size and nothing to fill it", "", Size{1300, 900}, "ask for a surround too"},
		{"smaller than the print", Stretch, Size{1300, 500}, "does not hold the print"},
		{"NaN", Stretch, Size{math.NaN(), 900}, "surround's width"},
		{"no height", Stretch, Size{1300, 0}, "surround's height"},
		{"too many sheets", Stretch, Size{90_000, 900}, "more than 500"},
		{"no colour", "mauve-ish", Size{}, "not a surround"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := wide()
			s.Surround, s.SurroundSize = c.surround, c.size
			_, err := s.Plan()
			require.ErrorContains(t, err, c.says)
		})
	}
	for _, c := range []struct {
		name  string
		spoil func(*Plan)
	}{
		{"a surround that is none", func(p *Plan) { p.Backdrop.Surround = "#2030" }},
		{"a larger board without one", func(p *Plan) { p.Backdrop.Surround = "" }},
		{"a picture larger than the board", func(p *Plan) { p.Picture.WidthMM = 2 * p.Backdrop.WidthMM }},
		{"a picture of NaN", func(p *Plan) { p.Picture.HeightMM = math.NaN() }},
		{"a travel of NaN", func(p *Plan) { p.Drop.TravelMM = math.NaN() }},
	} {
		t.Run("read back: "+c.name, func(t *testing.T) {
			s := wide()
			s.Surround = Stretch
			p := mustPlan(t, s)
			require.NoError(t, p.Check())
			c.spoil(&p)
			require.Error(t, p.Check())
		})
	}
}
