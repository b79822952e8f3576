package main

import (
	"encoding/json"
	"image"
	"math"
	"regexp"
	"strings"
	"testing"

	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/artwork"
	"dropsheet/tile/proof"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// wideFrame is a shot whose frame sees past the board on all sides.
const wideFrame = "size --verbose --drop 4.6mm --frame-width 40cm --pixels 1920x1280"

// What size says gets rid of the board's edge, or keeps the fill over a travel, does when it is asked for.
func TestWhatSizeAdvisesHelps(t *testing.T) {
	run := func(args string) string {
		stdout, stderr, code := dropsheet(t, strings.Fields(args)...)
		require.Equal(t, exitDone, code, "%s: %s", args, stderr)
		return stdout
	}
	said := regexp.MustCompile(`(?m)^ +!? *[a-z .0-9%]+: ((?:--[a-z-]+ [^ ,]+ ?)+)`)
	advice := func(stdout string) (flags []string) {
		for _, m := range said.FindAllStringSubmatch(stdout, -1) {
			flags = append(flags, m[1])
		}
		return flags
	}
	for _, first := range []string{"--distance 35cm", "--print-size 80x55cm", "--max-sheets 9",
		"--distance 412.37mm --fill 0.7777"} {
		stdout := run(wideFrame + " " + first)
		require.Contains(t, stdout, "the board's edge shows: left and right at x = ")
		flags := advice(stdout)
		require.Len(t, flags, 4, stdout)
		for _, f := range flags {
			require.Contains(t, run(wideFrame+" "+f), "no edge of the board shows", f)
		}
	}

	stdout := run(wideFrame + " --distance 35cm --travel 3mm")
	require.Contains(t, stdout, "up or down it may not stray at all: the picture's edge would show, since the board "+
		"ends where the fill does")
	require.Contains(t, stdout, "over the 3 mm each way that you asked for, only a fill of 8")
	flags := advice(stdout)
	require.Len(t, flags, 6, stdout)
	const whole = "a fill of 85 % stays free"
	require.Contains(t, run(wideFrame+" --travel 3mm "+flags[4]), "only "+whole)
	require.Contains(t, run(wideFrame+" --travel 3mm "+flags[5]), "asked for, "+whole)
}

// The figures are there for programs too.
func TestCoverageInJSON(t *testing.T) {
	stdout, stderr, code := dropsheet(t, strings.Fields(wideFrame+" --distance 35cm --travel 3mm --json")...)
	require.Equal(t, exitDone, code, stderr)
	var report struct {
		Coverage struct {
			Sees  struct{ Width, Height float64 } `json:"sees_mm"`
			Edges []struct {
				Side string
				AtPx float64 `json:"at_px"`
			}
			Remedies map[string]struct {
				Distance float64 `json:"distance_mm"`
				Fill     float64
				Sheets   int `json:"sheets_at_most"`
			}
		}
		Travel struct {
			Held   float64  `json:"held_fill"`
			Across *float64 `json:"across_mm"`
			Down   *float64 `json:"down_mm"`
			Asked  *struct {
				Fill  float64
				Holds bool
			}
		}
	}
	require.NoError(t, json.Unmarshal([]byte(stdout), &report))
	require.InDelta(t, 400*650.0/300, report.Coverage.Sees.Width, 0.6e-6, "to the nanometre")
	require.Len(t, report.Coverage.Edges, 4)
	require.Len(t, report.Coverage.Remedies, 4)
	require.Greater(t, report.Coverage.Remedies["larger_fill"].Fill, 0.85)
	require.Positive(t, report.Coverage.Remedies["nearer"].Sheets)
	require.InDelta(t, 0.85, report.Travel.Held, 1e-9)
	require.Positive(t, *report.Travel.Across)
	require.Zero(t, *report.Travel.Down)
	require.False(t, report.Travel.Asked.Holds)
}

// whitePlan is a plan from size's flags, and a white picture to hang on it.
func whitePlan(t *testing.T, args string) (layout.Plan, *texture.Texture) {
	t.Helper()
	stdout, stderr, code := dropsheet(t, append(strings.Fields(args), "--json")...)
	require.Equal(t, exitDone, code, stderr)
	var p layout.Plan
	require.NoError(t, json.Unmarshal([]byte(stdout), &p))
	white := image.NewGray(image.Rect(0, 0, 30, 20))
	for i := range white.Pix {
		white.Pix[i] = 255
	}
	return p, texture.New(&artwork.Picture{Image: white})
}

// lastLight is how far the light goes from (x, y) of the frame in a direction, in pixels: to where it falls
// to half of where it starts.
func lastLight(frame *image.RGBA, x, y, dx, dy int) float64 {
	from := float64(frame.RGBAAt(x, y).G)
	for n := 0; ; n++ {
		at := image.Pt(x+n*dx, y+n*dy)
		if !at.In(frame.Rect) || float64(frame.RGBAAt(at.X, at.Y).G) < from/2 {
			return float64(n) - 0.5 // the light ends on the near side of the pixel that is dark
		}
	}
}

// The board's edge shows in the proof, which knows nothing of coverage, in the pixel that size tells.
func TestTheProofShowsTheEdgeWhereSizeSays(t *testing.T) {
	p, white := whitePlan(t, wideFrame+" --distance 35cm")
	frame := proof.Pinhole(p, p.Camera, white)
	const x, y = 960 + 100, 640 + 100 // off the drop, on the board
	for _, e := range shot.Of(p).Coverage().Edges {
		var at float64
		switch e.Side {
		case "left":
			at = x + 0.5 - lastLight(frame, x, y, -1, 0)
		case "right":
			at = x + 0.5 + lastLight(frame, x, y, 1, 0)
		case "top":
			at = y + 0.5 - lastLight(frame, x, y, 0, -1)
		case "bottom":
			at = y + 0.5 + lastLight(frame, x, y, 0, 1)
		}
		require.InDelta(t, e.AtPx, at, 1, e.Side)
	}
}

// In the proof of a drop that has moved, the dark rim begins at the fill that size says is left of the
// picture, on the far side from the board's nearer edge.
func TestTheProofShowsTheRimOfADropThatTravelled(t *testing.T) {
	p, white := whitePlan(t, "size --drop 4.6mm --distance 35cm --frame-width 12mm --pixels 1200x800 --travel 2mm")
	fill := shot.Of(p).Travel().Asked.Fill
	require.Less(t, fill, p.Picture.Fill-0.002)
	// The drop has moved down, by hand's count of its apparent radius R D / sqrt(D² - R²).
	frame := proof.Scene{Plan: p, Camera: p.Camera, Picture: white, Sharp: true, Drops: []layout.Point{{YMM: 2}}}
	got, err := frame.Render(t.Context(), nil)
	require.NoError(t, err)
	d, r := p.Drop.CameraMM, p.Drop.DiameterMM/2
	radiusPx := r * d / math.Sqrt(d*d-r*r) / p.Camera.PixelMM()
	middle := 400 + int(2/p.Camera.PixelMM())
	rim := func(dy int) float64 { return lastLight(got, 600, middle, 0, dy) / radiusPx }
	// The drop turns what it sees: below its middle it looks up, above it down, where the board ends sooner.
	require.InDelta(t, fill, rim(-1), 1.5/radiusPx)
	require.Greater(t, rim(1), p.Picture.Fill+0.002)
}
