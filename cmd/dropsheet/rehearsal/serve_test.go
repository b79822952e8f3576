package rehearsal

import (
	"bufio"
	"context"
	"encoding/json"
	"io"
	"net"
	"net/http"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
)

// served serves a small pattern, and returns the page's address and the folder that the artwork lies in.
func served(t *testing.T) (url, folder string) {
	t.Helper()
	path, _ := jobtest.WritePattern(t, 60, 40)
	url, stop := serve(t, path, begunWith)
	t.Cleanup(stop)
	return url, filepath.Dir(path)
}

// begunWith are the words that most tests begin with.
var begunWith = job.Asked{"distance": {"20cm"}, "pixels": {"300x200"}, "frame-width": {"9mm"},
	"max-pixels": {"1000000"}}

// serve serves an artwork, with words to begin with, until stop, which waits until the server has left.
func serve(t *testing.T, path string, words job.Asked) (url string, stop func()) {
	t.Helper()
	l, err := net.Listen("tcp4", "127.0.0.1:0")
	require.NoError(t, err)
	ctx, cancel := context.WithCancel(context.Background())
	opened, ended := make(chan string, 1), make(chan error, 1)
	extent, _ := job.ReadExtent(path, 0, artwork.Default) // of what is not there, nothing
	subject := Subject{Artwork: path, Extent: extent, Limits: artwork.Default,
		Folder: filepath.Join(filepath.Dir(path), ask.BackdropFolder(path)),
		Words:  words}
	about := []Heading{{"drop", []string{"drop", "liquid", "drop-at"}},
		{"size and distance", []string{"distance", "fill", "max-sheets"}}, {"picture", []string{"round", "turn"}},
		{"motion", []string{"fall", "frame-rate"}},
		{"files", []string{"max-pixels", "out"}}}
	go func() { ended <- Serve(ctx, l, subject, about, func(url string) { opened <- url }) }()
	stopped := false
	return <-opened, func() {
		if !stopped {
			stopped = true
			cancel()
			require.NoError(t, <-ended)
		}
	}
}

// record is any record, with what follows it.
type record struct {
	Kind, Rung, Flag, Text, Summary, Make, Proof, Folder, Fresh, Board, File, What, Avoid string
	Bytes, Done, Of, Rays                                                                 int
	WidthPx                                                                               int `json:"width_px"`
	HeightPx                                                                              int `json:"height_px"`
	Placed                                                                                bool
	Files, Warnings                                                                       []string
	Sheets                                                                                any
	Figures, Plan                                                                         json.RawMessage
	Facts                                                                                 []fact
	Catches                                                                               []catch
	Ladder                                                                                []rung
	Count                                                                                 json.RawMessage
	EachS                                                                                 float64 `json:"each_s"`
	follows                                                                               []byte
}

// asked sends a question and reads all records of the answer.
func asked(t *testing.T, url, route string, body any) (records []record) {
	t.Helper()
	text, err := json.Marshal(body)
	require.NoError(t, err)
	r, err := http.Post(url+route, "application/json", strings.NewReader(string(text)))
	require.NoError(t, err)
	defer r.Body.Close()
	require.Equal(t, http.StatusOK, r.StatusCode)
	return readRecords(t, r.Body)
}

func readRecords(t *testing.T, from io.Reader) (records []record) {
	t.Helper()
	for lines := bufio.NewReader(from); ; {
		line, err := lines.ReadBytes('\n')
		if err == io.EOF {
			return records
		}
		require.NoError(t, err)
		var r record
		require.NoError(t, json.Unmarshal(line, &r))
		r.follows = make([]byte, r.Bytes)
		_, err = io.ReadFull(lines, r.follows)
		require.NoError(t, err)
		records = append(records, r)
	}
}
