package main

import (
	"encoding/json"
	"fmt"
	"image"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/artwork"
	"dropsheet/tile/proof"
	"dropsheet/tile/texture"
)

// What size says in words, case by case: what stands in it and what does not.
func TestWordsOfSize(t *testing.T) {
	for _, c := range []struct {
		name, args string
		says, not  []string
	}{
		{"a straight picture that covers is cut", "size --look straight",
			[]string{"cut to what the drop sees at the fill; --fit inside shows all of it",
				"the drop may not stray off the axis: the edge of the print would show, since the print ends where the fill does",
				"looks past the picture: an even 15 % of the drop's visible radius"},
			[]string{"laid out about the axis", "stray at all", "toward the corners"}},
		{"inside it is whole", "size --look straight --fit inside", nil, []string{"cut to what"}},
		{"a plain one is printed whole", "size", nil, []string{"cut to what", "print ends", "stretched"}},
		{"off its middle", "size --look straight --centre 0.1,0.5 --shape 1:1 --distance 300mm --fit inside",
			[]string{"print and board are laid out about the axis, and the picture lies to one side of it",
				"to either side it may not stray at all: the edge of the print would show, since the print ends where the fill " +
					"does"},
			[]string{"90.2 mm", "354 x 354"}},
		{"a square inside", "size --shape 1:1 --fit inside",
			[]string{"the drop may not stray off the axis: the picture's edge would show, since the board ends where the " +
				"fill does"},
			[]string{"stray at all"}},
		{"a surround as large as the fill", "size --look straight --surround black",
			[]string{"the drop may not stray off the axis: the board's edge would show"}, []string{"none is needed"}},
		{"a bulged rod", "size --body upright-rod --look bulged --distance 300mm",
			[]string{"not along, so that it looks stretched along the rod",
				"along it the frame sees the middle 96 mm of a print that is 295.5 mm high\n",
				"a frame pixel sees 0.7 mm across and 0.02 mm along of the print in the middle", "wrapped round the rod",
				"looks past the board", "the rod may stray off the axis any distance along itself"}, []string{"drop"}},
		{"a straight rod", "size --body level-rod --look straight", []string{"spans 531 x 354 frame pixels in the rod"},
			[]string{"drop", "stretched", "spans 6000"}},
		{"a rod under a lamp", "size --body level-rod --lamp 10cm,-50cm,90cm", nil, []string{"drop"}},
		{"the swing", "size", []string{"swinging from 10 % flatter than round to 11 % longer, the drop changes the " +
			"picture's edge by +4 % / -3 % in width and -5 % / +6 % in height",
			"its middle, where a face sits, changes by +4 % / " +
				"-4 % in width and -9 % / +12 % in height", "its width over height by +14 % / -14 %", "a free drop"}, nil},
		{"the swing of a drop that is flat already", "size --oblate 0.9", []string{"changes the picture's edge by 0 % / "},
			[]string{"-0 %"}},
		{"print resolution", "size", []string{"--ppi auto prints just that: smaller files, sooner printed"},
			[]string{"ink"}},
		{"a print that ends in the frame", "size --look straight --centre 0.02,0.5 --fit inside --frame-width 40mm",
			[]string{"the print ends inside the frame: right at x = 3147 pixels at the furthest",
				"of what the frame sees past the drop is not printed",
				"--surround black fills it, --background black only what the drop sees"},
			[]string{"no edge of the board shows"}},
		{"in a surround", "size --look straight --centre 0.02,0.5 --fit inside --frame-width 40mm --surround black",
			[]string{"no edge of the board shows"}, []string{"print ends"}},
		{"a background where sheets are left out", "size --look straight --fit inside --background navy --paper " +
			"100x100mm --distance 400mm --frame-width 600mm",
			[]string{"--surround navy in place of --background fills it"}, []string{"print larger", "hang it"}},
		{"a colour without a name: a background where sheets are left out", "size --look straight " +
			"--fit inside --background #203040 --paper 100x100mm --distance 400mm --frame-width 600mm",
			[]string{"--surround '#203040' in place of --background fills it"}, []string{"print larger", "hang it"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			stdout, stderr, code := dropsheet(t, append(strings.Fields(c.args), "--verbose")...)
			require.Equal(t, exitDone, code, stderr)
			stdout = strings.ReplaceAll(stdout, "backdrop", "board") // the word drop is looked for
			for _, says := range c.says {
				require.Contains(t, stdout, says)
			}
			for _, not := range c.not {
				require.NotContains(t, stdout, not)
			}
		})
	}
}

// A lamp that a rod shows is warned of as the rod's.
func TestWarningsOfARod(t *testing.T) {
	_, stderr, code := dropsheet(t, strings.Fields("size --body level-rod --lamp 0mm,0mm,10mm")...)
	require.Equal(t, exitDone, code)
	require.Contains(t, stderr, "the rod shows it")
	require.NotContains(t, stderr, "drop shows")
}

// The proof, which asks each place of the board for its own colour, shows as much that is not printed as size
// tells, and no print further right.
func TestTheProofShowsWhereThePrintEnds(t *testing.T) {
	stdout, stderr, code := dropsheet(t,
		strings.Fields("size --look straight --centre 0.02,0.5 --fit inside --frame-width 40mm --pixels 1200x800 --json")...)
	require.Equal(t, exitDone, code, stderr)
	var p layout.Plan
	require.NoError(t, json.Unmarshal([]byte(stdout), &p))
	var told struct {
		Coverage struct {
			PrintEnds *shot.PrintEnds `json:"print_ends"`
		}
	}
	require.NoError(t, json.Unmarshal([]byte(stdout), &told))
	require.NotNil(t, told.Coverage.PrintEnds)
	require.Len(t, told.Coverage.PrintEnds.Edges, 1)

	black := image.NewGray(image.Rect(0, 0, 30, 20)) // a black print beside white paper
	frame := proof.Pinhole(p, p.Camera, texture.New(&artwork.Picture{Image: black}))
	past, white, furthest := 0, 0, 0
	for y := range 800 {
		for x := range 1200 {
			at := p.Camera.At(float64(x)+0.5, float64(y)+0.5)
			if p.Sight().ShareAt(at.XMM, at.YMM) < 1.05 {
				continue
			}
			past++
			if g := frame.RGBAAt(x, y).G; g > 128 {
				white++
			} else {
				furthest = max(furthest, x+1)
			}
		}
	}
	require.InDelta(t, float64(white)/float64(past), told.Coverage.PrintEnds.Share, 0.02, fmt.Sprint(white, past))
	require.InDelta(t, told.Coverage.PrintEnds.Edges[0].AtPx, furthest, 3)
}
