package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
)

// seamsOf is what a job file says of its seams and of how they were placed, by its own words.
func seamsOf(t *testing.T, folder string) (j struct {
	Backdrop struct {
		Width  float64 `json:"width_mm"`
		Height float64 `json:"height_mm"`
	} `json:"backdrop"`
	Seams []struct {
		Axis string  `json:"axis"`
		At   float64 `json:"at_mm"`
	} `json:"seams"`
	Placement struct {
		Rule  string   `json:"rule"`
		Moved float64  `json:"moved_mm"`
		Share *float64 `json:"cost_share"`
		Avoid []struct {
			Crossing float64 `json:"crossing_mm"`
		} `json:"avoid"`
	} `json:"seam_placement"`
}) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(folder, "job.json"))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &j))
	return j
}

func TestSeamsSlide(t *testing.T) {
	path, _ := jobtest.WritePattern(t, 600, 400)
	out := t.TempDir()
	stdout, stderr, code := dropsheet(t, "make", path, "--distance", "40cm", "--pixels", "300x200", "--out",
		filepath.Join(out, "even"), "--seams", "even", "--verbose")
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stdout, "as even as they can be")
	even := seamsOf(t, filepath.Join(out, "even"))
	require.Equal(t, "even", even.Placement.Rule)
	require.Nil(t, even.Placement.Share)

	stdout, stderr, code = dropsheet(t, "make", path, "--distance", "40cm", "--pixels", "300x200", "--out",
		filepath.Join(out, "least"), "--verbose")
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stdout, "less than an even grid would")
	least := seamsOf(t, filepath.Join(out, "least"))
	require.Equal(t, "least", least.Placement.Rule)
	require.NotNil(t, least.Placement.Share)
	require.Less(t, *least.Placement.Share, 1.0)
	require.Len(t, least.Seams, len(even.Seams))
	furthest := 0.0
	for i, s := range least.Seams {
		furthest = max(furthest, math.Abs(s.At-even.Seams[i].At))
	}
	require.InDelta(t, furthest, least.Placement.Moved, 1e-9)
	require.Positive(t, furthest)
}

// The place that --avoid names, as it appears in the drop, is found on the board with half a turn, and no
// seam crosses it.
func TestAvoidKeepsSeamsOut(t *testing.T) {
	path, _ := jobtest.WritePattern(t, 600, 400)
	folder := filepath.Join(t.TempDir(), "job")
	const x, y, radius = 0.52, 0.31, 0.05
	_, stderr, code := dropsheet(t, "make", path, "--distance", "40cm", "--pixels", "300x200", "--out", folder,
		"--avoid", "0.52,0.31,0.05", "--avoid", "0.3,0.6,0.02")
	require.Equal(t, exitDone, code, stderr)
	require.NotContains(t, stderr, "warning")
	j := seamsOf(t, folder)
	radiusMM := radius * j.Backdrop.Width
	for _, s := range j.Seams {
		centre := (1 - x) * j.Backdrop.Width
		if s.Axis == "y" {
			centre = (1 - y) * j.Backdrop.Height
		}
		require.GreaterOrEqual(t, math.Abs(s.At-centre), radiusMM-1e-6, "seam %+v", s)
	}
	require.Len(t, j.Placement.Avoid, 2)
	require.Zero(t, j.Placement.Avoid[0].Crossing)
}

func TestAvoidSaysWhenItCanNot(t *testing.T) {
	path, _ := jobtest.WritePattern(t, 600, 400)
	folder := filepath.Join(t.TempDir(), "job")
	_, stderr, code := dropsheet(t, "make", path, "--distance", "40cm", "--pixels", "300x200", "--out", folder,
		"--avoid", "0.5,0.5,0.4")
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stderr, "warning: no layout")
	require.Contains(t, stderr, "0.5,0.5,0.4")
	require.Positive(t, seamsOf(t, folder).Placement.Avoid[0].Crossing)
}

func TestPlacementWords(t *testing.T) {
	for _, c := range []struct{ name, args, says string }{
		{"unknown rule", "--seams anywhere", "take least or even"},
		{"even and avoid", "--seams even --avoid 0.5,0.5,0.1", "give one of them"},
		{"avoid with two figures", "--avoid 0.5,0.5", "X,Y,R"},
		{"avoid beyond the picture", "--avoid 1.5,0.5,0.1", "X,Y,R"},
		{"avoid nothing", "--avoid 0.5,0.5,0", "R above 0"},
		{"avoid NaN", "--avoid NaN,0.5,0.1", "X,Y,R"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			_, stderr, code := dropsheet(t, append([]string{"make", "picture.png"}, strings.Fields(c.args)...)...)
			require.Equal(t, exitWrongWords, code)
			require.Contains(t, stderr, c.says)
		})
	}
}

// A seam that was put somewhere lies there, whatever the rule, and the job keeps the word.
func TestSeamPutSomewhere(t *testing.T) {
	path, _ := jobtest.WritePattern(t, 60, 40)
	for _, rule := range []string{"even", "least"} {
		out := filepath.Join(t.TempDir(), "job")
		_, stderr, code := dropsheet(t, "make", path, "--distance", "20cm", "--pixels", "300x200", "--out", out, "--seams",
			rule, "--seam-at", "c1=171.3mm")
		require.Equal(t, exitDone, code, stderr)
		j := seamsOf(t, out)
		require.Contains(t, j.Seams, struct {
			Axis string  `json:"axis"`
			At   float64 `json:"at_mm"`
		}{"x", 171.3})
		text, err := os.ReadFile(filepath.Join(out, "job.json"))
		require.NoError(t, err)
		require.Contains(t, string(text), `"c1=171.3mm"`)
	}
	_, stderr, code := dropsheet(t, "make", path, "--distance", "20cm", "--out", filepath.Join(t.TempDir(), "job"),
		"--seam-at", "C1=3mm")
	require.Equal(t, exitWrongWords, code)
	require.Contains(t, stderr, "by itself each may lie: C1 from 165.6 to")
}

// Where so few sheets can't keep seams out of a place, make says how many would do, and takes them if it may.
func TestMoreSheetsForAPlaceToAvoid(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	words := []string{"make", art, "--pixels", "24x16", "--max-sheets", "4", "--drop", "4mm", "--avoid", "0.5,0.5,0.1"}
	one, two := filepath.Join(t.TempDir(), "job"), filepath.Join(t.TempDir(), "job")
	stdout, stderr, code := dropsheet(t, append(words, "--out", one)...)
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stdout, "4 sheets of A4")
	require.Contains(t, stderr, "mm of seam cross 0.5,0.5,0.1; 9 sheets would do (--more-sheets 5), or take larger paper")
	stdout, stderr, code = dropsheet(t, append(words, "--out", two, "--more-sheets", "5")...)
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stdout, "9 sheets of A4")
	require.NotContains(t, stderr, "seam")
}
