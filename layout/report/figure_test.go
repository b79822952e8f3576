package report

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// How figures are written, each kind by cases worked out by hand.
func TestFiguresAreWritten(t *testing.T) {
	for _, c := range []struct {
		name   string
		figure Figure
		want   string
	}{
		{"a length to a tenth", length("", 889.2463), "889.2 mm"},
		{"zeros at the end are left out", length("", 400), "400 mm"},
		{"a minus before what rounds to zero goes", length("", -0.04), "0 mm"},
		{"a share in per cent", share("", 0.8499), "85 %"},
		{"enough is rounded up", enough("", 13.2401), "13.3 mm"},
		{"from 20 mm on to whole ones", enough("", 250.001), "251 mm"},
		{"enough that is even but for rounding", enough("", 250.00000000000003), "250 mm"},
		{"at most is rounded down", atMost("", 44.49), "44.4 mm"},
		{"a blur under a hundred pixels", blur("", 17.7431), "17.7 pixels"},
		{"a blur over a hundred", blur("", 7425.3), "7425 pixels"},
		{"a blur that would round to a hundred", blur("", 99.96), "100 pixels"},
		{"significant figures of a large number", significant("", 104.1666, Bare, 3), "104"},
		{"of a small one", significant("", 3.125, Bare, 3), "3.12"},
		{"an illuminance to three figures", lux("", 2_250_000), "2,250,000 lux"},
		{"that rounds to hundreds", lux("", 44_892), "44,900 lux"},
		{"a small one", lux("", 16.04), "16 lux"},
		{"four digits stand together", lux("", 8_996), "9000 lux"},
		{"two figures of a large number", rounded("", 12_345, Bare, 2), "12000"},
		{"a shutter", shutterTime("", 1.0/24000), "1/24000 s"},
		{"a long shutter", shutterTime("", 0.5), "0.5 s"},
		{"a shutter to three figures", shutterNear("", 1.0/44_394), "1/44400 s"},
		{"one that must not be longer", shutterUnder("", 1.0/82_524), "1/83000 s"},
		{"a long one that must not be longer", shutterUnder("", 0.5678), "0.567 s"},
		{"one stop", Figure{Value: 1.004, Unit: Stops, Decimals: 2}, "1 stop"},
		{"more stops", Figure{Value: 1.094, Unit: Stops, Decimals: 2}, "1.09 stops"},
		{"a column keeps its zeros", blur("", 7).Column(), "7.0"},
		{"no minus zero in a column", Length(-0.04).Column(), "0.0"},
		{"a small share keeps two figures", smallShare("", 0.0005), "0.05 %"},
		{"a very small share too", smallShare("", 0.0000123), "0.0012 %"},
		{"a share that is not so small", smallShare("", 0.0012), "0.1 %"},
		{"no share", smallShare("", 0), "0 %"},
		{"a fill that is not all", fill("", 0.99971), "99.97 %"},
		{"an angle", Figure{Value: 20, Unit: Degrees, Decimals: 2}, "20\u00b0"},
		{"a board to buy", WholeMM(roundUp(931, 10)), "940 mm"},
		{"a board that is even", WholeMM(roundUp(930, 10)), "930 mm"},
		{"how far 100 mm may be off", Off(100), "0.2 mm"},
		{"how far 30 mm may be off", Off(30), "0.2 mm"},
		{"a full stop by its mark", stop("", 11.313708498984761), "f/11"},
		{"another to a tenth", stop("", 14.5702), "f/14.6"},
		{"less light", light("", -3), "-3"},
		{"more light", light("", 0.97), "+1"},
		{"as much", light("", 0.02), "0"},
		{"a rate of many figures", frameRate("", 1e9), "1e+09"},
		{"a slow rate", frameRate("", 23.976), "24"},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, c.figure.String()) })
	}
}

// A text is put together in its order, and marks what should strike the eye.
func TestSay(t *testing.T) {
	text := say("a frame %s wide, %s", enough("frame", 13.24), strong(say("%s up", length("", 1))))
	require.Equal(t, "a frame 13.3 mm wide, 1 mm up", text.String())
	require.Len(t, text.Figures(), 2)
	require.Equal(t, "frame", text.Figures()[0].Path)
	var marked []string
	for _, p := range text {
		if p.Strong {
			marked = append(marked, Text{p}.String())
		}
	}
	require.Equal(t, []string{"1 mm", " up"}, marked)
	require.Equal(t, "889.2 x 592.8 mm", size(length("", 889.24), length("", 592.83)).String())
}

// Lengths in inches, to the nearest sixteenth, by hand: 889.2 mm are 35.008 in, 592.8 mm 23.339 in.
func TestInchesBeside(t *testing.T) {
	a4, err := layout.ParsePaper("A4")
	require.NoError(t, err)
	in := Of(layout.Plan{Inches: true, Backdrop: layout.Backdrop{Paper: a4}})
	for _, c := range []struct {
		name string
		text Text
		want string
	}{
		{"whole and sixteenths", say("%s off", Length(400)), "400 mm (15 3/4 in) off"},
		{"a size", say("%s", Size(889.2, 592.8)), "889.2 x 592.8 mm (35 x 23 5/16 in)"},
		{"below an inch", say("lap %s", Length(10)), "lap 10 mm (3/8 in)"},
		{"too small for sixteenths", say("blur %s", Fine(0.08)), "blur 0.08 mm"},
		{"what is in brackets already", Far(2500), "2500 mm, 98 7/16 in (2.5 m)"},
		{"no length", say("%s", Share(0.5)), "50 %"},
	} {
		require.Equal(t, c.want, in.Beside(c.text).String(), c.name)
	}
	require.Equal(t, "400 mm", Of(layout.Plan{}).Beside(Length(400).Text()).String(), "not asked for")
}
