package layout

import "math"

// A pupil of radius 1 is looked through in rows that lie tangentially, and in places along each. Sums over them take
// the mean of a polynomial over the disc exactly: up to the seventh degree along the rows, the 19th in both together.

// pupilRows are the rows of half a pupil: Gauss's places for what goes with the length of a row (Abramowitz and
// Stegun, Handbook of Mathematical Functions, 25.4.40), of twice as many, whose others lie opposite. A row counts by
// its length, and what is found along it by that length once more.
var pupilRows = func() (rows [5]struct{ aside, halfLength float64 }) {
	for i := range rows {
		sin, cos := math.Sincos(math.Pi * float64(i+1) / float64(2*len(rows)+1))
		rows[i].aside, rows[i].halfLength = cos, sin
	}
	return rows
}()

// alongRow are places from one end of a row, 0, to its other, 1, and their weights: Gauss's eight (Abramowitz and
// Stegun, 25.4.30) in the square root of the place. Light that grazes the drop's edge lands at a distance that goes
// with the root of how far inside it passes; so the first end, where rays graze, is told as closely as the rest.
var alongRow = func() (places [8]struct{ share, weight float64 }) {
	for i, g := range [4]struct{ at, weight float64 }{
		{0.1834346424956498, 0.3626837833783620}, {0.5255324099163290, 0.3137066458778873},
		{0.7966664774136267, 0.2223810344533745}, {0.9602898564975363, 0.1012285362903763},
	} {
		for k, root := range [2]float64{(1 - g.at) / 2, (1 + g.at) / 2} {
			places[2*i+k].share, places[2*i+k].weight = root*root, root*g.weight
		}
	}
	return places
}()
