package rehearsal

import (
	"strings"

	"dropsheet/tile/hint"
	"dropsheet/tile/job"
)

// errorRecord says what can't be, and by which flag.
type errorRecord struct {
	head
	Flag string `json:"flag,omitempty"` // empty where it is not known which
	Text string `json:"text"`
	Hint string `json:"hint,omitempty"`
}

func newErrorRecord(err error, words []Word) errorRecord {
	e := blamed(err, words)
	wrong, hints := hint.Cut(e)
	return errorRecord{head{Kind: "error"}, e.flag, job.Printable(wrong), job.Printable(strings.Join(hints, "; "))}
}
