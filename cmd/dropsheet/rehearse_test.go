package main

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
)

// firstLine keeps what is written and tells of the first whole line.
type firstLine struct {
	mutex sync.Mutex
	bytes.Buffer
	line chan string
}

func (f *firstLine) Write(p []byte) (int, error) {
	f.mutex.Lock()
	defer f.mutex.Unlock()
	before := bytes.Count(f.Bytes(), []byte("\n"))
	n, err := f.Buffer.Write(p)
	if line, _, ok := strings.Cut(f.String(), "\n"); ok && before == 0 {
		f.line <- line
	}
	return n, err
}

// rehearsed runs rehearse until the page has been used, and ends it as Ctrl-C does.
func rehearsed(t *testing.T, use func(address string), args ...string) (stdout, stderr string, code int) {
	t.Helper()
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	out := firstLine{line: make(chan string, 1)}
	var errs bytes.Buffer
	ended := make(chan int, 1)
	go func() {
		ended <- run(ctx, console{out: &out, err: &errs}, append([]string{"rehearse", "--no-open"}, args...))
	}()
	select {
	case line := <-out.line:
		if address, ok := strings.CutPrefix(line, "rehearse: "); ok && use != nil {
			use(address)
		}
	case code = <-ended:
		return out.String(), errs.String(), code
	case <-time.After(20 * time.Second):
		t.Error("rehearse says nothing")
	}
	stop()
	return out.String(), errs.String(), <-ended
}

// lookAt is the records of one kind that the page gets by words.
func lookAt(t *testing.T, address, kind string, words [][2]string) (records []json.RawMessage) {
	t.Helper()
	body, err := json.Marshal(map[string]any{"words": words, "side_px": 64})
	require.NoError(t, err)
	r, err := http.Post(address+"look", "application/json", bytes.NewReader(body))
	require.NoError(t, err)
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	for len(text) > 0 {
		line, rest, ok := bytes.Cut(text, []byte("\n"))
		require.True(t, ok)
		var head struct {
			Kind  string
			Bytes int
		}
		require.NoError(t, json.Unmarshal(line, &head))
		if head.Kind == kind {
			records = append(records, line)
		}
		text = rest[head.Bytes:]
	}
	return records
}

func beginsWith(t *testing.T, address string) (words [][2]string) {
	t.Helper()
	r, err := http.Get(address + "start")
	require.NoError(t, err)
	defer r.Body.Close()
	var begins struct{ Words [][2]string }
	require.NoError(t, json.NewDecoder(r.Body).Decode(&begins))
	return begins.Words
}

// The first line on stdout is the page's address and nothing else; Ctrl-C ends it as a thing that is done, and leaves
// nothing. The figures on the page are those of size --json, all of them.
func TestRehearse(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	flags := []string{"--distance", "20cm", "--frame-width", "9mm", "--pixels", "300x200", "--lamp", "-60cm,-40cm,90cm",
		"--frame-rate", "1000", "--fall", "20cm", "--iso", "3200", "--lamp-lux", "20000"}
	stdout, stderr, code := rehearsed(t, func(address string) {
		words := beginsWith(t, address)
		require.Contains(t, words, [2]string{"lamp", "-60cm,-40cm,90cm"})
		require.Len(t, words, len(flags)/2)
		told := lookAt(t, address, "figures", words)
		require.Len(t, told, 1)
		var page struct{ Figures any }
		require.NoError(t, json.Unmarshal(told[0], &page))
		exactly, err := json.MarshalIndent(page.Figures, "", "  ")
		require.NoError(t, err)
		require.NoError(t, json.Unmarshal(toNanometres(exactly), &page.Figures))
		text, _, code := dropsheet(t, append([]string{"size", art, "--json"}, flags...)...)
		require.Equal(t, exitDone, code)
		var size any
		require.NoError(t, json.Unmarshal([]byte(text), &size))
		require.Equal(t, size, page.Figures)
	}, append([]string{art}, flags...)...)
	require.Equal(t, exitDone, code, stderr)
	require.Empty(t, stderr)
	require.Regexp(t, regexp.MustCompile(`\Arehearse: http://127\.0\.0\.1:[0-9]+/[A-Z2-7]{26}/\n\z`), stdout)
	left, err := os.ReadDir(filepath.Dir(art))
	require.NoError(t, err)
	require.Len(t, left, 1)
}

// Of a job it begins with the job's words, those given before them, and knows its artwork though that has gone.
func TestRehearseAJob(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--distance", "20cm", "--fill", "0.8", "--max-sheets", "50")
	require.NoError(t, os.Rename(art, art+".gone"))
	_, stderr, code := rehearsed(t, func(address string) {
		words := beginsWith(t, address)
		require.Contains(t, words, [2]string{"fill", "0.8"})
		require.Contains(t, words, [2]string{"distance", "25cm"})
		require.NotContains(t, words, [2]string{"distance", "20cm"})
		plans := lookAt(t, address, "plan", words)
		require.Len(t, plans, 2)
		require.Contains(t, string(plans[0]), `"distance_mm":250`)
	}, folder, "--distance", "25cm")
	require.Equal(t, exitDone, code, stderr)
}

// What can't be rehearsed is told before any page is served.
func TestRehearseRefuses(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	for _, c := range []struct {
		name string
		args []string
		code int
		says string
	}{
		{"nothing", nil, exitWrongWords, "rehearse takes one artwork, and got none"},
		{"two", []string{art, art}, exitWrongWords, "takes one artwork, and got"},
		{"what is not there", []string{"nowhere.png"}, exitFailed, "no such file"},
		{"a set-up that can't be", []string{art, "--distance", "3mm"}, exitWrongWords, "does not turn the picture over"},
		{"a folder to write", []string{art, "--out", "x"}, exitWrongWords, "unknown flag: --out"},
		{"no port", []string{art, "--port", "70000"}, exitWrongWords, "--port"},
	} {
		t.Run(c.name, func(t *testing.T) {
			stdout, stderr, code := rehearsed(t, nil, c.args...)
			require.Equal(t, c.code, code, stderr)
			require.Empty(t, stdout)
			require.Contains(t, stderr, c.says)
		})
	}
}
