package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Lengths are rounded to the nanometre wherever they stand, and nothing else is touched.
func TestToNanometres(t *testing.T) {
	type point struct {
		X float64 `json:"x"`
	}
	in := struct {
		Width float64   `json:"width_mm"`
		Small float64   `json:"small_mm"`
		Share float64   `json:"share"`
		Name  string    `json:"name"`
		At    point     `json:"at_mm"`
		Edges []float64 `json:"edges_mm"`
		Words []string  `json:"words"`
		After float64   `json:"after"`
	}{609.5999999999999, -1e-9, 0.12345678901234, `"width_mm": 1.23456789012`, point{0.1 + 0.2},
		[]float64{1.0000000001, 2}, []string{"{", "[", `"x_mm": {`, "]"}, 0.30000000000000004}
	text, err := json.MarshalIndent(in, "", "  ")
	require.NoError(t, err)
	out := in
	require.NoError(t, json.Unmarshal(toNanometres(text), &out))
	in.Width, in.Small, in.At.X, in.Edges = 609.6, 0, 0.3, []float64{1, 2}
	require.Equal(t, in, out)
}

// No length that size tells to programs has more than six places after the point.
func TestLengthsWithoutNoise(t *testing.T) {
	stdout, stderr, code := dropsheet(t, "size", "--paper", "letter", "--print-size", "24x18in", "--shape", "4:3",
		"--frame-width", "30cm", "--lamp", "60,-40,90cm", "--json")
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stdout, `"width_mm": 609.6,`)
	var tree any
	require.NoError(t, json.Unmarshal([]byte(stdout), &tree))
	lengths := 0
	var walk func(name string, v any, length bool)
	walk = func(name string, v any, length bool) {
		switch v := v.(type) {
		case map[string]any:
			for name, inner := range v {
				walk(name, inner, length || strings.HasSuffix(name, "_mm"))
			}
		case []any:
			for _, inner := range v {
				walk(name, inner, length)
			}
		case float64:
			if length {
				lengths++
				require.InDelta(t, v, math.Round(v*1e6)/1e6, 0, name)
			}
		}
	}
	walk("", tree, false)
	require.Greater(t, lengths, 50)
}
