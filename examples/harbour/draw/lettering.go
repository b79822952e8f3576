package main

import (
	"slices"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// text sets words in Go Bold, capitals capH high, centred on cx with the baseline at y, made wider or narrower by stretch.
func text(words string, cx, y, capH, stretch float64) shape {
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
		at := func(p fixed.Point26_6) pt {
			return pt{pen + float64(p.X)*scale*stretch, y - float64(p.Y)*scale}
		}
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
		pen += float64(advance) * scale * stretch
	}
	return out.moved(cx-pen/2, 0)
}

// bolder is the edge of the letters, width wide: laid over them it makes them bolder by half of that all round.
func (s shape) bolder(width float64) shape {
	var out shape
	for _, edge := range s {
		if edge[0] == edge[len(edge)-1] {
			edge = edge[:len(edge)-1]
		}
		out = append(out, line(width, slices.Concat(edge, edge[:2]))...) // once round and on to the first corner's far side
	}
	return out
}
