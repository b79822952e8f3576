package paint

import (
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Text sets words in Go Bold, capitals capH high, centred on cx with the baseline at y, made wider or
// narrower by stretch (1 is as it is); spacing is added between letters.
func Text(words string, cx, y, capH, stretch, spacing float64) Shape {
	face, err := opentype.Parse(gobold.TTF)
	if err != nil {
		panic(err) // the font is compiled in
	}
	const em = 2048
	var buf sfnt.Buffer
	metrics, err := face.Metrics(&buf, fixed.I(em), font.HintingNone)
	if err != nil {
		panic(err)
	}
	scale := capH / float64(metrics.CapHeight)
	var out Shape
	pen := 0.0
	for _, r := range words {
		glyph, err := face.GlyphIndex(&buf, r)
		if err != nil {
			panic(err)
		}
		segments, err := face.LoadGlyph(&buf, glyph, fixed.I(em), nil)
		if err != nil {
			panic(err)
		}
		at := func(p fixed.Point26_6) Point {
			return Point{pen + float64(p.X)*scale*stretch, y - float64(p.Y)*scale}
		}
		for _, s := range segments {
			last := len(out) - 1
			switch s.Op {
			case sfnt.SegmentOpMoveTo:
				out = append(out, []Point{at(s.Args[0])})
			case sfnt.SegmentOpLineTo:
				out[last] = append(out[last], at(s.Args[0]))
			case sfnt.SegmentOpQuadTo: // Go Bold is a TrueType font: it has no cubic curves
				a, b, c := out[last][len(out[last])-1], at(s.Args[0]), at(s.Args[1])
				for k := 1; k <= 12; k++ {
					t := float64(k) / 12
					u := 1 - t
					out[last] = append(out[last], Point{u*u*a.X + 2*u*t*b.X + t*t*c.X, u*u*a.Y + 2*u*t*b.Y + t*t*c.Y})
				}
			}
		}
		advance, err := face.GlyphAdvance(&buf, glyph, fixed.I(em), font.HintingNone)
		if err != nil {
			panic(err)
		}
		pen += float64(advance)*scale*stretch + spacing
	}
	return out.Moved(cx+(spacing-pen)/2, 0)
}
