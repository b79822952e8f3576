package main

// It is 21:12.
const (
	minuteAngle = 12.0 / 60 * 4 * quarter
	hourAngle   = (9 + 12.0/60) / 12 * 4 * quarter
)

// hands lie over all else, with a shadow on the glass.
func hands(pic *picture) {
	hour := together(
		poly(-22, 0, 22, 0, 26, 300, -26, 300),
		poly(-26, 296, 26, 296, 74, 392, 0, 560, -74, 392)).turned(hourAngle)
	minute := poly(-34, -190, 34, -190, 27, 0, 24, 900, 0, 1262, -24, 900, -27, 0).turned(minuteAngle)
	for _, hand := range []shape{hour, minute} {
		pic.fill(hand.moved(10, -16), func(_, _ float64) ink { return rgb(0x6a3418).alpha(0.4) })
		pic.fill(hand, flat(navy))
	}
	pic.fill(disc(0, 0, 62), flat(navy))
	pic.fill(disc(0, 0, 44), upward(-44, 0xb4713a, 44, 0xffe2a4))
	pic.fill(disc(0, 0, 14), flat(navy))
}
