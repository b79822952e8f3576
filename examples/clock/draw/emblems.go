package main

// compass is the chart's rose, in colours light enough for the hands to stand out on it.
func compass(pic *picture) {
	pic.fill(ring(212, 218), flat(0xb06c34))
	star(pic, pt{}, 284, 122, rgb(0xe2853f), rgb(0x2f6a78))
}

// cutter sails over the upper line.
func cutter(pic *picture) {
	fill := func(s shape, colour uint32) { pic.fill(s.moved(0, 500), flat(colour)) }
	fill(bar(9, 0, 60, 0, 272), navy)
	fill(poly(-9, 84, -9, 250, -112, 84), coral)                                                     // mainsail
	fill(poly(9, 84, 9, 228, 106, 84), 0xf08a4c)                                                     // foresail
	fill(poly(0, 272, 0, 254, -52, 263), navy)                                                       // pennant
	fill(outline(points(-128, 66, 134, 66), curve(134, 66, 112, 34, 84, 14), points(-92, 14)), navy) // hull
}

// anchor hangs under the lower line.
func anchor(pic *picture) {
	s := together(
		bar(22, 0, -228, 0, -62),
		bar(22, -62, -92, 62, -92),
		stroke(14, arc(0, -38, 22, 22, 0, 4*quarter)),
		stroke(22, arc(0, -128, 104, 104, -0.25*quarter, -1.75*quarter)),
		poly(104, -118, 126, -184, 62, -166),
		poly(-104, -118, -126, -184, -62, -166),
	)
	pic.fill(s.moved(0, -496), flat(navy))
}
