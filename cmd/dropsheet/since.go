package main

import (
	"io"
	"strings"

	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

// since is what differs from the job that one was asked for again.
type since struct {
	Job     string          `json:"since"` // its folder
	Words   []string        `json:"words_changed"`
	Figures []report.Change `json:"differs"`
	facts   []report.Fact
}

// sinceJob compares what is asked now, in other words or the same, with a job; nil where there is none.
func sinceJob(was *job.Job, words []string, is *report.Report) *since {
	if was == nil {
		return nil
	}
	before := report.Of(was.Plan)
	s := &since{was.Folder(), words, is.Changes(before), is.Since(before)}
	if s.Words == nil {
		s.Words = []string{}
	}
	return s
}

// write tells it to people.
func (s *since) write(w io.Writer) error {
	if s == nil {
		return nil
	}
	words := "asked in the same words"
	if len(s.Words) > 0 {
		words = strings.Join(s.Words, ", ")
	}
	first := report.Fact{Name: "since", Text: report.Words(s.Job + ": " + words)}
	facts := s.facts
	if len(facts) == 0 {
		facts = []report.Fact{{Name: "differs", Text: report.Words("nothing that decides print or shot")}}
	}
	return writeFacts(w, append([]report.Fact{first}, facts...)...)
}
