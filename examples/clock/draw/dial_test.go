package main

import (
	"math"
	"testing"

	"dropsheet/examples/paint"

	"github.com/stretchr/testify/require"
)

// TestDialTouchesTheSides holds the rim to 2 % short of the sides: 1470 of 1500 units.
func TestDialTouchesTheSides(t *testing.T) {
	for _, c := range []struct {
		name string
		x, y float64
	}{{"top", 0, 1}, {"right", 1, 0}, {"left", -1, 0}} { // at the foot the brass is dark
		t.Run(c.name, func(t *testing.T) {
			brass, wall := spot(small(), 1463*c.x, 1463*c.y, 4), spot(small(), 1490*c.x, 1490*c.y, 4)
			require.Greater(t, luma(brass), luma(wall)+25)
		})
	}
}

// TestHandsTellTwelvePastNine: twelve minutes are a fifth of a turn, 72 degrees; the hour hand stands a fifth
// of the way from 9 (270 degrees) to 10 (300 degrees).
func TestHandsTellTwelvePastNine(t *testing.T) {
	dark := func(degrees, r float64) bool {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		return luma(spot(small(), r*sin, r*cos, 8)) < 80
	}
	for r := 350.0; r <= 1150; r += 50 { // its last 100 units are too fine a point for this size
		require.True(t, dark(72, r), "the minute hand at radius %v", r)
		require.False(t, dark(78, r), "beside the minute hand at radius %v", r)
		if r < 900 { // beyond stands the 9
			require.Equal(t, r <= 500, dark(276, r), "the hour hand at radius %v", r)
		}
	}
}

// TestWordsStandUprightAndStraight: both lines are dark on light inside their own height, and light just over
// and under it all along.
func TestWordsStandUprightAndStraight(t *testing.T) {
	for _, c := range []struct {
		name             string
		base, capH, half float64
	}{{"HARBOUR OFFICE", 344, 96, 600}, {"PORT LARKEN", -440, 96, 500}} {
		t.Run(c.name, func(t *testing.T) {
			within, letters := 0, 0
			for x := -c.half; x < c.half; x += 5 {
				within++
				if luma(spot(small(), x, c.base+c.capH/2, 2.5)) < 90 {
					letters++
				}
				for _, y := range []float64{c.base - 12, c.base + c.capH + 12} {
					require.Greater(t, luma(spot(small(), x, y, 2.5)), 120.0, "at %v, %v", x, y)
				}
			}
			require.Greater(t, letters, within/5, "too few dark strokes")
			require.Less(t, letters, within*2/3, "too many dark strokes")
		})
	}
	// The first line begins with the upright of H and ends with the three arms of E; mirrored it would be the
	// other way round.
	column := func(x, y float64) bool { return luma(spot(small(), x, y, 3)) < 110 }
	left, right := 0, 0
	for y := 352.0; y < 432; y += 4 {
		if column(-605, y) {
			left++
		}
		if column(605, y) {
			right++
		}
	}
	require.Greater(t, left, right+8, "the first line must begin with an upright and end with arms")
}

// TestNumerals counts the ink in each numeral's place, and tells 6 from 9: a 6 has its bowl below, a 9 above.
func TestNumerals(t *testing.T) {
	for n := 1; n <= 12; n++ {
		sin, cos := math.Sincos(float64(n) * 2 * math.Pi / 12)
		x, y := 1058*sin, 1058*cos
		share := darkShare(x-170, y-160, x+170, y+160)
		require.Greater(t, share, 0.09, "numeral %d is missing", n)
		require.Less(t, share, 0.6, "numeral %d is a blot", n)
	}
	require.Greater(t, darkShare(-100, -1200, 100, -1058), 1.2*darkShare(-100, -1058, 100, -916), "6 is upside down")
	require.Greater(t, darkShare(-1158, 0, -958, 150), 1.2*darkShare(-1158, -150, -958, 0), "9 is upside down")
}

// TestWordsKeepClear holds the words off the ring round the chart (its inner line begins at 802 units) and
// off the compass, by 20 units at least.
func TestWordsKeepClear(t *testing.T) {
	for i, s := range []paint.Shape{harbourOffice(), portLarken()} {
		for _, c := range s {
			for _, p := range c {
				require.Less(t, math.Hypot(p.X, p.Y), 802-20.0, "line %d runs into the ring", i+1)
				require.Greater(t, math.Abs(p.Y), 284+20.0, "line %d runs into the compass", i+1)
			}
		}
	}
}

// TestNumeralsKeepClear holds every numeral off the minutes' track, the ring round the chart and both hands,
// by 20 units at least.
func TestNumeralsKeepClear(t *testing.T) {
	minute, hour := 72*math.Pi/180, 276*math.Pi/180
	for n := 1; n <= 12; n++ {
		sin, cos := math.Sincos(float64(n) * 2 * math.Pi / 12)
		for _, c := range numeral(n, numeralR*sin, numeralR*cos, 244) {
			for _, p := range c {
				r := math.Hypot(p.X, p.Y)
				require.Less(t, r, 1270-20.0, "numeral %d runs into the hour marks", n)
				require.Greater(t, r, 832+20.0, "numeral %d runs into the ring", n)
				along, off := p.X*math.Sin(minute)+p.Y*math.Cos(minute), p.X*math.Cos(minute)-p.Y*math.Sin(minute)
				require.True(t, along < 0 || math.Abs(off) > 27+20, "numeral %d runs into the minute hand", n)
				along = p.X*math.Sin(hour) + p.Y*math.Cos(hour)
				require.True(t, along < 0 || r > 560+20, "numeral %d runs into the hour hand", n)
			}
		}
	}
}

// darkShare is how much of a box, in units, is ink.
func darkShare(x0, y0, x1, y1 float64) float64 {
	dark, all := 0.0, 0.0
	for y := y0 + 2.5; y < y1; y += 5 {
		for x := x0 + 2.5; x < x1; x += 5 {
			all++
			if luma(spot(small(), x, y, 2.5)) < 80 {
				dark++
			}
		}
	}
	return dark / all
}
