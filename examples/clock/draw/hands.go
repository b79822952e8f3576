package main

import "dropsheet/examples/paint"

// It is 21:12.
const (
	minuteAngle = 12.0 / 60 * 4 * quarter
	hourAngle   = (9 + 12.0/60) / 12 * 4 * quarter
)

// hands lie over all else, with a shadow on the glass.
func hands(dial paint.Place) {
	hour := paint.Together(
		paint.Poly(-22, 0, 22, 0, 26, 300, -26, 300),
		paint.Poly(-26, 296, 26, 296, 74, 392, 0, 560, -74, 392)).Turned(hourAngle)
	minute := paint.Poly(-34, -190, 34, -190, 27, 0, 24, 900, 0, 1262, -24, 900, -27, 0).Turned(minuteAngle)
	for _, hand := range []paint.Shape{hour, minute} {
		dial.Fill(hand.Moved(10, -16), func(_, _ float64) paint.Ink { return paint.RGB(0x6a3418).Alpha(0.4) })
		dial.Fill(hand, paint.Flat(navy))
	}
	dial.Fill(disc(0, 0, 62), paint.Flat(navy))
	dial.Fill(disc(0, 0, 44), paint.Upward(-44, 0xb4713a, 44, 0xffe2a4))
	dial.Fill(disc(0, 0, 14), paint.Flat(navy))
}
