package ask

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

func TestValues(t *testing.T) {
	for _, c := range []struct {
		name, in string
		parse    func(string) (any, error)
		want     any
	}{
		{"speed", "2m/s", anyOf(speed), 2000.0},
		{"speed that rises", "-500mm/s", anyOf(speed), -500.0},
		{"speed in capitals", " 2 M/S", anyOf(speed), 2000.0},
		{"pixel size", "28um", anyOf(pixelSize), 0.028},
		{"pixel size in millimetres", "0.005mm", anyOf(pixelSize), 0.005},
		{"lamp", "-60cm,-40cm,90cm", anyOf(lampPlace), layout.Lamp{XMM: -600, YMM: -400, ZMM: 900}},
		{"lamp, spaced", "1m, 0mm, 2m", anyOf(lampPlace), layout.Lamp{XMM: 1000, ZMM: 2000}},
		{"aim at the drop", "drop", anyOf(lampAim), layout.Aim{AtDrop: true}},
		{"aim at the drop, in capitals", " Drop", anyOf(lampAim), layout.Aim{AtDrop: true}},
		{"aim at a place", "10cm,-5cm", anyOf(lampAim), layout.Aim{XMM: 100, YMM: -50}},
		{"place of a drop", "0.5mm,-1mm", anyOf(dropPlace), layout.Point{XMM: 0.5, YMM: -1}},
		{"place to avoid", "0.5, 0.4, 0.1", anyOf(avoided), job.Avoided{X: 0.5, Y: 0.4, Radius: 0.1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := c.parse(c.in)
			require.NoError(t, err)
			require.Equal(t, c.want, got)
		})
	}
}

func TestValuesThatCantBe(t *testing.T) {
	const (
		aSpeed = "is not a speed\nhint: write a length a second, such as 2m/s (mm, cm, m or in)"
		aPixel = "is not the size of a sensor's pixel\nhint: write a number and its unit, above 0 and below 1mm, such as 28um"
		aAim   = "is nothing to point a lamp at\n" +
			"hint: write drop, or two lengths from the board's middle, right and down, such " +
			"as 10cm,-5cm"
		aAvoid = "is not a place to avoid\nhint: write X,Y,R such as 0.5,0.4,0.1, each from 0 to 1 and R above 0"
	)
	for _, c := range []struct {
		name, in string
		parse    func(string) (any, error)
		says     string
	}{
		{"speed without a time", "2m", anyOf(speed), aSpeed},
		{"speed without a unit", "2/s", anyOf(speed), aSpeed},
		{"speed by the hour", "7km/h", anyOf(speed), aSpeed},
		{"no speed", "0m/s", anyOf(speed),
			`"0m/s" is no speed of a drop that passes` + "\nhint: leave it out for one that stands still"},
		{"speed NaN", "NaNm/s", anyOf(speed), aSpeed},
		{"pixel without a unit", "28", anyOf(pixelSize), aPixel},
		{"pixel of nothing", "0um", anyOf(pixelSize), aPixel},
		{"pixel below nothing", "-28um", anyOf(pixelSize), aPixel},
		{"pixel as large as a lens", "28mm", anyOf(pixelSize), aPixel},
		{"lamp with two figures", "1m,2m", anyOf(lampPlace), "write three lengths, such as -60cm,-40cm,90cm"},
		{"lamp without units", "1,2,3", anyOf(lampPlace), "has no unit"},
		{"aim with one figure", "10cm", anyOf(lampAim), aAim},
		{"aim with three", "1cm,2cm,3cm", anyOf(lampAim), aAim},
		{"aim without units", "1,2", anyOf(lampAim), aAim},
		{"aim at something else", "camera", anyOf(lampAim), aAim},
		{"place of a drop with one figure", "1mm", anyOf(dropPlace), "is not a place\n" +
			"hint: write two lengths, such as 0.5mm,-1mm"},
		{"place to avoid, of no size", "0.5,0.5,0", anyOf(avoided), aAvoid},
		{"place to avoid, beyond", "0.5,1.1,0.1", anyOf(avoided), aAvoid},
		{"place to avoid, NaN", "0.5,NaN,0.1", anyOf(avoided), aAvoid},
		{"beam too wide", "180", anyOf(within(narrowestBeamDeg, widestBeamDeg)), "write a plain number from 1 to 179"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := c.parse(c.in)
			require.ErrorContains(t, err, c.says)
		})
	}
}

// anyOf is a reader of values whatever they are.
func anyOf[T any](parse func(string) (T, error)) func(string) (any, error) {
	return func(s string) (any, error) { return parse(s) }
}
