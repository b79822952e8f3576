package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The table of stops fits a terminal of 100 columns, marks the plan's own stop, and holds a line for each stop.
func TestSizeTellsSharpness(t *testing.T) {
	for _, c := range []struct {
		name, args string
		says       []string
		not        []string
	}{
		{"by default", "",
			[]string{"no stop holds", "does not help", "f/4 ", "f/64 ", "> f/16            0",
				"between the two (the plan), 2.6 mm back: at f/16", "least blur"},
			[]string{"frames/s", "mains", "along rod", "along it"}},
		// Halving the rate gains one stop: 12,500 to 6,250 (common practice, no source).
		{"with a frame rate and room", "--frame-rate 12500 --sharp-to 8 --aperture f/11",
			[]string{"f/10 to f/21 hold", "> f/11            0     12500", "f/16           -1      6250",
				"swings over 125 frames on 50 Hz, 104 frames on 60 Hz",
				"take lamps on direct current or high frequency"},
			[]string{"no stop holds", "does not help"}},
		{"a rod at a slow rate, between full stops", "--body upright-rod --frame-rate 25 --aperture f/13",
			[]string{"along rod", "along it nothing is bent, and the picture is seen at nearly its true place, far behind",
				"> f/13            0        25",
				"lasts 4 pulses on 50 Hz, 4.8 pulses on 60 Hz"},
			[]string{"swings"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			stdout, stderr, code := dropsheet(t, append([]string{"size", "--verbose"}, strings.Fields(c.args)...)...)
			require.Equal(t, exitDone, code, stderr)
			for _, says := range c.says {
				require.Contains(t, stdout, says)
			}
			for _, not := range c.not {
				require.NotContains(t, stdout, not)
			}
			_, table, found := strings.Cut(stdout, "\n\n")
			require.True(t, found)
			lines := strings.Split(strings.TrimSpace(table), "\n")
			require.GreaterOrEqual(t, len(lines), 1+1+9)
			for _, line := range lines {
				require.LessOrEqual(t, len(line), 100, line)
			}
		})
	}
}

// Programs get every figure of the table.
func TestSharpnessInJSON(t *testing.T) {
	stdout, stderr, code := dropsheet(t, "size", "--json", "--frame-rate", "12500")
	require.Equal(t, exitDone, code, stderr)
	type focused struct {
		FocusMM float64 `json:"focus_mm"`
		Blur    struct {
			EdgePx     float64            `json:"edge_px"`
			Centre     map[string]float64 `json:"centre"`
			AtFill     map[string]float64 `json:"at_fill"`
			BackdropPx float64            `json:"backdrop_px"`
		} `json:"blur_px"`
	}
	var got struct {
		Camera struct {
			FocusMM   float64 `json:"focus_mm"`
			SharpToPx float64 `json:"sharp_to_px"`
		} `json:"camera"`
		Sharpness struct {
			Stops []struct {
				FNumber   float64 `json:"f_number"`
				Current   bool    `json:"current"`
				FrameRate float64 `json:"frame_rate"`
				Edge      focused `json:"focus_edge"`
				Picture   focused `json:"focus_picture"`
				Best      focused `json:"focus_best"`
			} `json:"stops"`
			Wider map[string]float64 `json:"wider_frame"`
			Mains []map[string]float64
		} `json:"sharpness"`
	}
	require.NoError(t, json.Unmarshal([]byte(stdout), &got))
	require.Equal(t, 2.0, got.Camera.SharpToPx)
	require.Len(t, got.Sharpness.Stops, 9)
	for _, stop := range got.Sharpness.Stops {
		require.Positive(t, stop.FrameRate)
		for _, f := range []focused{stop.Edge, stop.Picture, stop.Best} {
			require.True(t, f.FocusMM > 0 && f.Blur.EdgePx > 0 && f.Blur.BackdropPx > 0)
			for _, name := range []string{"tangential_px", "sagittal_px"} {
				require.True(t, f.Blur.Centre[name] > 0 && f.Blur.AtFill[name] > 0, name)
			}
		}
		if stop.Current {
			require.Equal(t, 16.0, stop.FNumber)
			require.Equal(t, got.Camera.FocusMM, stop.Best.FocusMM, "the plan is in focus where the table says")
		}
	}
	require.Greater(t, got.Sharpness.Wider["frame_width_mm"], 72.0)
	require.Equal(t, 125.0, got.Sharpness.Mains[0]["frames_per_pulse"])
}
