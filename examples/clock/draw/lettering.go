package main

import (
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// capU is how high the words' capitals are, line1U and line2U where their baselines lie.
const capU, line1U, line2U = 96.0, 344.0, -440.0

func harbourOffice() shape { return text("HARBOUR OFFICE", line1U, capU, 2) }
func portLarken() shape    { return text("PORT LARKEN", line2U, capU, 14) }

// words letters the dial, each line on a clear band with round ends that keeps the grid off the letters.
func words(pic *picture) {
	mid1, mid2 := line1U+capU/2, line2U+capU/2
	pic.fill(stroke(156, points(-580, mid1, 580, mid1)), glass)
	pic.fill(stroke(156, points(-500, mid2, 500, mid2)), glass)
	pic.fill(harbourOffice(), flat(navy))
	pic.fill(portLarken(), flat(navy))
}

// text sets words in Go Bold, capitals capH high, centred on x = 0 with the baseline at y; spacing is added between letters.
func text(words string, y, capH, spacing float64) shape {
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
	var out shape
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
		at := func(p fixed.Point26_6) pt { return pt{pen + float64(p.X)*scale, y - float64(p.Y)*scale} }
		for _, s := range segments {
			last := len(out) - 1
			switch s.Op {
			case sfnt.SegmentOpMoveTo:
				out = append(out, []pt{at(s.Args[0])})
			case sfnt.SegmentOpLineTo:
				out[last] = append(out[last], at(s.Args[0]))
			case sfnt.SegmentOpQuadTo: // Go Bold is a TrueType font: it has no cubic curves
				a, b, c := out[last][len(out[last])-1], at(s.Args[0]), at(s.Args[1])
				for k := 1; k <= 12; k++ {
					t := float64(k) / 12
					u := 1 - t
					out[last] = append(out[last], pt{u*u*a.x + 2*u*t*b.x + t*t*c.x, u*u*a.y + 2*u*t*b.y + t*t*c.y})
				}
			}
		}
		advance, err := face.GlyphAdvance(&buf, glyph, fixed.I(em), font.HintingNone)
		if err != nil {
			panic(err)
		}
		pen += float64(advance)*scale + spacing
	}
	return out.moved((spacing-pen)/2, 0)
}
