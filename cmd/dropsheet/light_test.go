package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// lightOf asks size for its figures as a program would.
func lightOf(t *testing.T, flags string) (light map[string]any, stderr string) {
	t.Helper()
	stdout, stderr, code := dropsheet(t, append([]string{"size", "--json"}, strings.Fields(flags)...)...)
	require.Equal(t, exitDone, code, stderr)
	var report map[string]any
	require.NoError(t, json.Unmarshal([]byte(stdout), &report))
	light, _ = report["light"].(map[string]any)
	return light, stderr
}

func TestSizeTellsTheLight(t *testing.T) {
	light, stderr := lightOf(t, "--distance 40cm")
	require.Nil(t, light, "no lamp, nothing to tell")
	require.Empty(t, stderr)

	// One lamp on the axis: the cosine-fourth law at the print's corner.
	light, stderr = lightOf(t, "--print-size 900x600mm --lamp 0mm,0mm,800mm")
	require.Empty(t, stderr)
	require.InDelta(t, -4*math.Log2(math.Cos(math.Atan(math.Hypot(450, 300)/800))), light["falloff_stops"], 1e-9)

	stdout, _, code := dropsheet(t, "size", "--verbose", "--print-size", "900x600mm", "--lamp", "0mm,0mm,800mm")
	require.Equal(t, exitDone, code)
	for _, says := range []string{"falls off by 1.09 stops", "top left 1.09, top right 1.09, bottom left 1.09, bottom " +
		"right 1.09", "--level", "shiny paper mirrors lamp 1 in the drop"} {
		require.Contains(t, stdout, says)
	}
}

func TestLampsAreWarnedOf(t *testing.T) {
	for _, c := range []struct{ name, flags, says string }{
		{"cut edges away from the lamp", "--distance 40cm --lamp 60cm,-40cm,90cm", "--light-from top-right"},
		{"a lamp in the frame", "--distance 40cm --lamp 2cm,1cm,45cm --light-from bottom-right",
			"lamp 1 stands in the frame"},
		{"a lamp that the drop shows", "--distance 40cm --lamp -30cm,-5cm,10cm", "lamp 1 stands where the drop shows it"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, stderr := lightOf(t, c.flags)
			require.Contains(t, stderr, "warning: ")
			require.Contains(t, stderr, c.says)
		})
	}
}

func TestLevelIsRecordedAndToldOnlyWhenAsked(t *testing.T) {
	path, _ := jobtest.WritePattern(t, 60, 40)
	const flags = "--distance 8cm --lamp -40cm,-40cm,30cm --level --travel 0.5mm --surround navy --surround-size 30x22cm"
	levelled := readFolder(t, mustMake(t, path, strings.Fields(flags)...))
	plain := readFolder(t, mustMake(t, path, strings.Fields(strings.Replace(flags, " --level ", " ", 1))...))
	require.Contains(t, string(levelled[place.JobFile]), "levelled_for_mm")
	require.NotContains(t, string(plain[place.JobFile]), "levelled_for_mm")
	require.NotEqual(t, levelled["sheets.pdf"], plain["sheets.pdf"])
}
