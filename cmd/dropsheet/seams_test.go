package main

import (
	"encoding/json"
	"fmt"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
)

// sights is what a program reads of seams --json, by its own words.
type sights struct {
	SeamWidth float64 `json:"seam_width_mm"`
	Sights    []struct {
		Axis    string   `json:"axis"`
		At      float64  `json:"at_mm"`
		Between []string `json:"between"`
		Path    string   `json:"path"`
		OnBoard struct{ X, Y float64 }
		Frame   struct{ X, Y float64 } `json:"frame_px"`
		Times   float64                `json:"over_threshold"`
		Width   float64                `json:"width_px"`
		PxPerMM float64                `json:"px_per_mm"`
		Blur    float64                `json:"blur_px"`
		Verdict string                 `json:"verdict"`
		Remedy  *struct {
			TouchUp int     `json:"touch_up_level"`
			Seam    float64 `json:"seam_mm"`
			Open    float64 `json:"open_to_f_number"`
			Close   float64 `json:"close_to_f_number"`
		} `json:"remedy"`
	} `json:"sights"`
	OutOfSight []struct{ Between []string } `json:"out_of_sight"`
	Seams      struct {
		Show, Faint, Hidden int
		OutOfSight          int `json:"out_of_sight"`
	}
}

func seamSights(t *testing.T, args ...string) (s sights) {
	t.Helper()
	stdout, stderr, code := dropsheet(t, append([]string{"seams", "--json"}, args...)...)
	require.Equal(t, exitDone, code, stderr)
	require.NoError(t, json.Unmarshal([]byte(stdout), &s))
	return s
}

func TestSeams(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 600, 400)
	folder := mustMake(t, art, "--distance", "40cm", "--seams", "even", "--frame-width", "9mm", "--pixels", "600x400")
	before := readFolder(t, folder)
	asMade := seamSights(t, folder)

	t.Run("the plainest first, each with what hides it", func(t *testing.T) {
		require.NotEmpty(t, asMade.Sights)
		last := math.Inf(1)
		verdicts := map[string]int{}
		for _, s := range asMade.Sights {
			require.LessOrEqual(t, s.Times, last)
			last = s.Times
			verdicts[s.Verdict]++
			want := "hidden"
			if s.Times >= 3 {
				want = "shows"
			} else if s.Times >= 1 {
				want = "faint"
			}
			require.Equal(t, want, s.Verdict)
			require.Equal(t, s.Verdict != "hidden", s.Remedy != nil)
			require.InDelta(t, 0.3*s.PxPerMM, s.Width, 1e-6, "both are rounded to a millionth")
			require.True(t, s.Frame.X >= 0 && s.Frame.X <= 600 && s.Frame.Y >= 0 && s.Frame.Y <= 400)
		}
		require.NotZero(t, verdicts["faint"]+verdicts["shows"], "a white edge in a pattern without white")
		require.Contains(t, []string{"in the drop", "beside the drop"}, asMade.Sights[0].Path)
	})
	t.Run("the table tells the same", func(t *testing.T) {
		stdout, stderr, code := dropsheet(t, "seams", folder)
		require.Equal(t, exitDone, code, stderr)
		require.Empty(t, stderr)
		rows := regexp.MustCompile(`(?m)^(shows|faint|hidden) .*(R\d+C\d+\|R\d+C\d+)`).FindAllStringSubmatch(stdout, -1)
		require.Len(t, rows, len(asMade.Sights))
		for i, row := range rows {
			require.Equal(t, asMade.Sights[i].Verdict, row[1])
			require.Equal(t, strings.Join(asMade.Sights[i].Between, "|"), row[2])
		}
		require.Contains(t, stdout, "pencil")
		for _, line := range strings.Split(stdout, "\n") {
			require.LessOrEqual(t, len([]rune(line)), 80, line)
		}
	})
	t.Run("what-ifs change the set-up and not the print", func(t *testing.T) {
		closer := seamSights(t, folder, "--seam-width", "0.6mm", "--aperture", "f/32")
		require.Equal(t, 0.6, closer.SeamWidth)
		require.Greater(t, closer.Sights[0].Width, asMade.Sights[0].Width)
		// A gap that is said to be hidden is, when it is tried.
		for _, s := range asMade.Sights {
			if s.Remedy == nil || s.Remedy.Seam == 0 {
				continue
			}
			narrower := seamSights(t, folder, "--seam-width", jsonNumber(s.Remedy.Seam)+"mm")
			for _, n := range narrower.Sights {
				if n.Path == s.Path && strings.Join(n.Between, "") == strings.Join(s.Between, "") {
					require.Equal(t, "hidden", n.Verdict)
				}
			}
			break
		}
		wide := seamSights(t, folder, "--frame-width", "300mm", "--aperture", "f/45")
		beside := 0
		for _, s := range wide.Sights {
			if s.Path == "beside the drop" {
				beside++
			}
		}
		require.Greater(t, beside, 4, "a wide frame sees seams beside the drop")
	})
	t.Run("nothing is written unless asked for, nor over anything", func(t *testing.T) {
		require.Equal(t, before, readFolder(t, folder))
		out := filepath.Join(t.TempDir(), "map.png")
		stdout, stderr, code := dropsheet(t, "seams", folder, "--out", out)
		require.Equal(t, exitDone, code, stderr)
		require.Contains(t, stdout, out)
		f, err := os.Open(out)
		require.NoError(t, err)
		defer f.Close()
		drawn, err := png.Decode(f)
		require.NoError(t, err)
		require.Equal(t, 2000, drawn.Bounds().Dx())
		// The camera as the job has it gives the job's own map.
		same, err := os.ReadFile(out)
		require.NoError(t, err)
		require.Equal(t, before["seams.png"], same)

		_, stderr, code = dropsheet(t, "seams", folder, "--out", out)
		require.Equal(t, exitFailed, code)
		require.Contains(t, stderr, "--force")
		_, stderr, code = dropsheet(t, "seams", folder, "--out", out, "--force", "--aperture", "f/64")
		require.Equal(t, exitDone, code, stderr)
		other, err := os.ReadFile(out)
		require.NoError(t, err)
		require.NotEqual(t, same, other)
	})
	t.Run("artwork that changed", func(t *testing.T) {
		other := filepath.Join(t.TempDir(), "pattern.png")
		data, err := os.ReadFile(art)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(other, append(data, 0), 0o600))
		_, stderr, code := dropsheet(t, "seams", folder, "--artwork", other)
		require.Equal(t, exitFailed, code)
		require.Contains(t, stderr, "not the one this job was made from")
	})
	t.Run("wrong words", func(t *testing.T) {
		for _, c := range []struct{ args, says string }{
			{"seams", "takes one job"}, {"seams one two", "takes one job"},
			{"seams job --seam-width 0mm", "above 0mm"}, {"seams job --drop 4mm", "unknown flag"},
		} {
			_, stderr, code := dropsheet(t, strings.Fields(c.args)...)
			require.Equal(t, exitWrongWords, code)
			require.Contains(t, stderr, c.says)
		}
	})
}

// make and seams count seams, each once by its plainer sight, and say so in the same words. The frame is
// wide, so that seams have two sights.
func TestSeamsAreCountedOnce(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 600, 400)
	folder := filepath.Join(t.TempDir(), "job")
	made, stderr, code := dropsheet(t, "make", art, "--out", folder, "--seams", "even", "--frame-width", "90mm",
		"--aperture", "f/32", "--pixels", "600x400", "--verbose")
	require.Equal(t, exitDone, code, stderr)
	told, stderr, code := dropsheet(t, "seams", folder)
	require.Equal(t, exitDone, code, stderr)
	s := seamSights(t, folder)

	plainest := map[string]float64{}
	for _, sight := range s.Sights {
		seam := strings.Join(sight.Between, "|")
		plainest[seam] = max(plainest[seam], sight.Times)
	}
	require.Greater(t, len(s.Sights), len(plainest), "some seams have two sights")
	show, faint, hidden := 0, 0, 0
	for _, times := range plainest {
		switch {
		case times >= 3:
			show++
		case times >= 1:
			faint++
		default:
			hidden++
		}
	}
	require.NotZero(t, show+faint)
	require.Equal(t, []int{show, faint, hidden, len(s.OutOfSight)},
		[]int{s.Seams.Show, s.Seams.Faint, s.Seams.Hidden, s.Seams.OutOfSight})
	counted := fmt.Sprintf("%d of %d show in the frame, %d more faintly", show, len(plainest)+len(s.OutOfSight), faint)
	require.Contains(t, made, counted+": dropsheet seams")
	require.Contains(t, strings.ReplaceAll(told, "\n"+strings.Repeat(" ", factColumns), " "),
		fmt.Sprintf("%s; %d hidden, %d out of the frame's sight\n", counted, hidden, len(s.OutOfSight)))
}

// Every command with --out says so at once when its folder is missing, and never by the name of an unfinished file.
func TestOutIntoNoFolder(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	job := mustMake(t, art)
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("afile", nil, 0o600))
	for _, c := range []string{"proof", "seams", "reprint"} {
		t.Run(c, func(t *testing.T) {
			args := []string{c, job}
			if c == "reprint" {
				args = append(args, "R1")
			}
			_, stderr, code := dropsheet(t, append(args, "--out", "nodir/x")...)
			require.Equal(t, exitFailed, code)
			require.Contains(t, stderr, `folder "nodir" is not there`+"\nhint: make it first or choose another with --out")
			require.NoDirExists(t, "nodir")
			_, stderr, code = dropsheet(t, append(args, "--out", "afile/x")...)
			require.Equal(t, exitFailed, code)
			require.Contains(t, stderr, `"afile/x"`)
			require.NotContains(t, stderr, "unfinished")
		})
	}
}

// A job of one sheet has no seams, and says so.
func TestSeamsOfOneSheet(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--max-sheets", "1")
	require.Empty(t, seamSights(t, folder).Sights)
	stdout, stderr, code := dropsheet(t, "seams", folder)
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stdout, "there are none")
}

func jsonNumber(v float64) string {
	text, _ := json.Marshal(v)
	return string(text)
}
