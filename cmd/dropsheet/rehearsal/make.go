package rehearsal

import (
	"context"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"sync"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/tile/job"
	"dropsheet/tile/seamsight"
)

// order is what the page wants made.
type order struct {
	Words []Word `json:"words"`
	// What to do where the folder is there already: nothing but ask, make another beside it, or replace it.
	Fresh   bool `json:"fresh"`
	Replace bool `json:"replace"`
}

// making is the one job that may be made at a time, and what was made last.
type making struct {
	mutex  sync.Mutex
	busy   bool
	ended  sync.WaitGroup
	folder string // of the last one made; empty for none
	names  []string
}

// begin takes the one place; false when it is taken.
func (m *making) begin() bool {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	if m.busy {
		return false
	}
	m.busy = true
	m.ended.Add(1)
	return true
}

func (m *making) end() {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	m.busy = false
	m.ended.Done()
}

// wait waits until nothing is being made.
func (m *making) wait() { m.ended.Wait() }

// Records of a job that is being made.
type (
	progressRecord struct {
		head
		What string `json:"what"`
		Done int    `json:"done"`
		Of   int    `json:"of"`
	}
	warningRecord struct {
		head
		Text string `json:"text"`
	}
	thereRecord struct { // the folder is there: the page asks what to do
		head
		Folder string `json:"folder"`
		Fresh  string `json:"fresh"` // what another beside it would be called
	}
	madeRecord struct {
		head
		Folder    string   `json:"folder"`
		Files     []string `json:"files"`
		Sheets    int      `json:"sheets"`
		CheckCode string   `json:"check_code"`
		Seams     string   `json:"seams"`
	}
)

// make makes the job of words, and tells how it goes on. The page stops it by leaving.
func (s *server) make(w http.ResponseWriter, r *http.Request) {
	var o order
	if !receive(w, r, &o) {
		return
	}
	if !s.making.begin() {
		refuse(w, http.StatusConflict)
		return
	}
	defer s.making.end()
	to, end := newRecords(r.Context(), w)
	defer end()
	if err := s.makeJob(r.Context(), o, to); err != nil {
		to.write(newErrorRecord(err, o.Words), nil)
	}
}

func (s *server) makeJob(ctx context.Context, o order, to *records) error {
	subject, back := s.bench.lend()
	defer back()
	folder := subject.Folder
	if there(folder) && !o.Replace {
		fresh := freshFolder(folder)
		if !o.Fresh {
			to.write(thereRecord{head{Kind: "there"}, filepath.Base(folder), filepath.Base(fresh)}, nil)
			return nil
		}
		folder = fresh
	}
	if _, err := read(o.Words); err != nil {
		return err
	}
	var m ask.Make
	flags := pflag.NewFlagSet("make", pflag.ContinueOnError)
	m.Register(flags)
	for _, word := range known(flags, append(subject.fixed(), o.Words...)) {
		if err := ask.Set(flags, word.Flag(), word.Value()); err != nil {
			return flagError{word.Flag(), err}
		}
	}
	if err := m.Of(subject.Artwork); err != nil {
		return err
	}
	ordered, err := m.Order()
	if err != nil {
		return err
	}
	ordered.From = subject.From
	ordered.LeaveArtwork = ordered.LeaveArtwork && !subject.Dropped
	ordered.Folder, ordered.Force, ordered.Limits = folder, o.Replace, subject.Limits
	j, err := job.Make(ctx, ordered, job.Watch{
		Warn: func(warning string) { to.write(warningRecord{head{Kind: "warning"}, warning}, nil) },
		Progress: func(what string, done, of int) {
			if what != "row" || done%32 == 0 || done == of {
				to.write(progressRecord{head{Kind: "progress"}, what, done, of}, nil)
			}
		},
	})
	if err != nil {
		return err
	}
	names := j.FileNames()
	s.making.mutex.Lock()
	s.making.folder, s.making.names = folder, names
	s.making.mutex.Unlock()
	seen := ""
	if len(j.Seen) > 0 {
		seen = seamsight.Count(j.Seen).Seen().String()
	}
	to.write(madeRecord{head{Kind: "made"}, folder, names, len(j.Sheets), j.CheckCode, seen}, nil)
	return nil
}

func there(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// freshFolder is the folder's name with the first number that none beside it has.
func freshFolder(folder string) string {
	for n := 2; ; n++ {
		if fresh := fmt.Sprintf("%s-%d", folder, n); !there(fresh) {
			return fresh
		}
	}
}
