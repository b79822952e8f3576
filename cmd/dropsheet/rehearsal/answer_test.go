package rehearsal

import (
	"bufio"
	"encoding/json"
	"io"
	"net/http"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var usual = []Word{{"distance", "20cm"}, {"pixels", "300x200"}, {"frame-width", "9mm"}}

// An answer climbs the ladder: plan, draft, figures, the seams in their places, the board, few rays, verdicts, all
// rays.
func TestAnswerClimbs(t *testing.T) {
	address, _ := served(t)
	var kinds []string
	all := asked(t, address, "look", question{Words: usual, SidePx: 200})
	for _, r := range all {
		kinds = append(kinds, strings.TrimSpace(r.Kind+" "+r.Rung))
		require.Equal(t, r.Bytes, len(r.follows))
		if r.Kind == "frame" || r.Kind == "board" {
			require.Equal(t, 4*r.WidthPx*r.HeightPx, r.Bytes)
		}
	}
	require.Equal(t, []string{"plan", "frame draft", "figures", "plan", "board", "frame few", "verdicts", "frame fine"},
		kinds)
	require.False(t, all[0].Placed)
	require.True(t, all[3].Placed)
	require.Equal(t, 200, all[7].WidthPx)
	require.Equal(t, 24, all[7].Rays)
	require.NotEqual(t, all[5].follows, all[7].follows, "more rays are finer")
	require.Contains(t, all[3].Make, "dropsheet make ")
	require.Contains(t, all[3].Make, "--distance 20cm --pixels 300x200 --frame-width 9mm --out ")

	again := asked(t, address, "look", question{Words: usual, SidePx: 200, Board: all[4].Board})
	require.Equal(t, "frame", again[4].Kind, "a board that the page has is not sent again")
	require.Equal(t, all[7].follows, again[len(again)-1].follows, "the same words, the same frame")

	few := asked(t, address, "look", question{Words: append([]Word{{"samples", "3"}, {"drop-at", "1mm,0mm"},
		{"sharp", "true"}}, usual...), SidePx: 100})
	require.Equal(t, 3, few[len(few)-1].Rays)
	require.Contains(t, few[0].Proof, "--samples 3 --drop-at 1mm,0mm --sharp")
	require.NotContains(t, few[0].Make, "samples")

	thumb := asked(t, address, "look", question{Words: usual, SidePx: 90, Draft: true})
	require.Len(t, thumb, 3)
	require.Equal(t, "figures", thumb[1].Kind)
	require.Equal(t, []string{"few", "90"}, []string{thumb[2].Rung, strconv.Itoa(thumb[2].WidthPx)})
	large := asked(t, address, "look", question{Words: usual, SidePx: 500, Draft: true})
	require.Equal(t, "fine", large[len(large)-1].Rung)
	whole := asked(t, address, "look", question{Words: usual, SidePx: 500})
	require.Equal(t, whole[len(whole)-1].follows, large[len(large)-1].follows, "a take is compared by its very frame")
}

// A word that can't be taken comes back in the command line's own words, with its flag; two that contradict each other
// too.
func TestAnswerBlames(t *testing.T) {
	address, _ := served(t)
	for _, c := range []struct {
		name       string
		words      []Word
		flag, says string
	}{
		{"no unit", []Word{{"distance", "4"}}, "distance", `--distance: "4" has no unit`},
		{"no such flag", []Word{{"distnce", "4mm"}}, "distnce", "unknown flag: --distnce"},
		{"three of two", []Word{{"lens", "50mm"}, {"frame-width", "9mm"}, {"camera-distance", "30cm"}}, "lens",
			"any two give the third"},
		{"a set-up that can't be", []Word{{"distance", "3mm"}}, "", "does not turn the picture over"},
		{"a folder", []Word{{"out", "/tmp/x"}}, "out", "unknown flag: --out"},
		{"a file", []Word{{"artwork", "/etc/passwd"}}, "artwork", "is for the command line"},
		{"force", []Word{{"force", "true"}}, "force", "unknown flag: --force"},
		{"the bound on artworks", []Word{{"max-pixels", "99999999999"}}, "max-pixels", "is for the command line"},
		{"drops in one another", []Word{{"drop-at", "0mm,0mm"}, {"drop-at", "1mm,0mm"}}, "", "would run into one"},
	} {
		t.Run(c.name, func(t *testing.T) {
			all := asked(t, address, "look", question{Words: c.words})
			require.Len(t, all, 1)
			require.Equal(t, "error", all[0].Kind)
			require.Equal(t, c.flag, all[0].Flag)
			require.Contains(t, all[0].Text, c.says)
			if !strings.Contains(c.says, "would run into one") { // which is the proof's
				require.Equal(t, "error", asked(t, address, "make", order{Words: c.words})[0].Kind)
			}
		})
	}
}

// However many ask at once, the last is answered whole, those before it are cut short, and nobody waits for ever.
func TestOvertaken(t *testing.T) {
	address, _ := served(t)
	const many = 30
	cut := make(chan string, many)
	for range many {
		go func() {
			r, err := http.Post(address+"look", "application/json", strings.NewReader(endless))
			if err != nil {
				cut <- err.Error()
				return
			}
			defer r.Body.Close()
			text, _ := io.ReadAll(r.Body)
			cut <- string(text)
		}()
	}
	for range many - 1 { // who all came before the one that is rendering now
		require.NotContains(t, <-cut, `"rung":"fine"`)
	}
	all := asked(t, address, "look", question{Words: usual, SidePx: 64})
	require.Equal(t, "fine", all[len(all)-1].Rung)
	require.NotContains(t, <-cut, `"rung":"fine"`)
}

// endless is a question whose last frame takes many minutes.
const endless = `{"words":[["distance","20cm"],["pixels","600x400"],["samples","4096"],["frame-width","9mm"]],
	"side_px":600}`

// askedUntil asks a question and reads the records of its answer until one with such words in it; the rest is left.
func askedUntil(t *testing.T, address, body string, words ...string) *http.Response {
	t.Helper()
	r, err := http.Post(address+"look", "application/json", strings.NewReader(body))
	require.NoError(t, err)
	t.Cleanup(func() { r.Body.Close() })
	lines := bufio.NewReader(r.Body)
	for _, word := range words {
		for line := ""; !strings.Contains(line, word); {
			line, err = lines.ReadString('\n')
			require.NoError(t, err, word)
		}
	}
	return r
}

// A page that asks and does not read loses its turn to the next.
func TestPageThatDoesNotRead(t *testing.T) {
	address, _ := served(t)
	// Of the frame that begins there more is to be written than lies in any buffer.
	askedUntil(t, address, `{"words":[["distance","20cm"],["pixels","1900x1900"],["frame-width","9mm"],["samples","1"]],
		"side_px":1900}`, `"rung":"few"`)
	began := time.Now()
	all := asked(t, address, "look", question{Words: usual, SidePx: 64})
	require.Equal(t, "fine", all[len(all)-1].Rung)
	require.Less(t, time.Since(began), recordTime, "it would have lost it after that in any case")
}

// Ctrl-C ends the server while it renders, at once.
func TestEnds(t *testing.T) {
	path := patternFile(t)
	address, stop := serve(t, path, begunWith)
	r := askedUntil(t, address, endless, `"rung":"few"`, `"kind":"verdicts"`)
	stop()
	_, err := io.Copy(io.Discard, r.Body)
	require.NoError(t, err, "the answer is ended, not torn off once patience has come to its end")
	_, err = http.Get(address)
	require.Error(t, err)
}

// What the page begins with: the words of the command line, but not what that alone sets, and flags under headings.
func TestStart(t *testing.T) {
	address, folder := served(t)
	r, err := http.Get(address + "start")
	require.NoError(t, err)
	defer r.Body.Close()
	var b beginning
	require.NoError(t, json.NewDecoder(r.Body).Decode(&b))
	require.Nil(t, b.Error)
	require.Equal(t, []Word{{"distance", "20cm"}, {"frame-width", "9mm"}, {"pixels", "300x200"}}, b.Words)
	require.Equal(t, 60, b.WidthPx)
	require.Equal(t, folder+"/pattern-backdrop", b.Folder)
	require.Len(t, b.Headings, 4, "the command line's own are not the page's")
	require.Equal(t, "distance", b.Headings[1].Flags[0].Name)
	require.Empty(t, b.Takes)
}

// The page's four verdicts find their facts: each of the topics that it tells of has some, with a whole shot asked for.
func TestFactsOfTheVerdicts(t *testing.T) {
	address, _ := served(t)
	words := append([]Word{{"lamp", "-60cm,0cm,80cm"}, {"lamp-lux", "20000"}, {"iso", "3200"}, {"frame-rate", "1000"},
		{"fall", "20cm"}}, usual...)
	told := map[string]bool{}
	for _, r := range asked(t, address, "look", question{Words: words, SidePx: 64}) {
		for _, f := range r.Facts {
			topic, _, _ := strings.Cut(f.Key, ".")
			told[topic] = told[topic] || f.Text != ""
		}
		if r.Kind == "figures" {
			require.NotEmpty(t, r.Ladder)
			require.Greater(t, r.Ladder[0].Smear, 0.0)
			require.NotEmpty(t, r.Catches)
		}
	}
	for _, topic := range []string{"sharp", "focus", "lux", "light", "glare", "motion", "travel", "print"} {
		require.True(t, told[topic], topic)
	}
}
