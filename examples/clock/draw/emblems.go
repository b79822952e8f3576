package main

import "dropsheet/examples/paint"

// compass is the chart's rose, in colours light enough for the hands to stand out on it.
func compass(dial paint.Place) {
	dial.Fill(ring(212, 218), paint.Flat(0xb06c34))
	star(dial, paint.Point{}, 284, 122, paint.RGB(0xe2853f), paint.RGB(0x2f6a78))
}

// cutter sails over the upper line.
func cutter(dial paint.Place) {
	fill := func(s paint.Shape, colour uint32) { dial.Fill(s.Moved(0, 500), paint.Flat(colour)) }
	fill(bar(9, 0, 60, 0, 272), navy)
	// mainsail
	fill(paint.Poly(-9, 84, -9, 250, -112, 84), coral)
	// foresail
	fill(paint.Poly(9, 84, 9, 228, 106, 84), 0xf08a4c)
	// pennant
	fill(paint.Poly(0, 272, 0, 254, -52, 263), navy)
	// hull
	fill(paint.Outline(paint.Points(-128, 66, 134, 66), paint.Curve(134, 66, 112, 34, 84, 14), paint.Points(-92, 14)),
		navy)
}

// anchor hangs under the lower line.
func anchor(dial paint.Place) {
	s := paint.Together(
		bar(22, 0, -228, 0, -62),
		bar(22, -62, -92, 62, -92),
		stroke(14, arc(0, -38, 22, 22, 0, 4*quarter)),
		stroke(22, arc(0, -128, 104, 104, -0.25*quarter, -1.75*quarter)),
		paint.Poly(104, -118, 126, -184, 62, -166),
		paint.Poly(-104, -118, -126, -184, -62, -166),
	)
	dial.Fill(s.Moved(0, -496), paint.Flat(navy))
}
