package rehearsal

import (
	"net/http"
	"path/filepath"
	"slices"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
)

// Heading is a subject that flags stand under.
type Heading struct {
	Title string
	Flags []string
}

// heading is one with what the page must know of its flags.
type heading struct {
	Title string     `json:"title"`
	Flags []flagInfo `json:"flags"`
}

// flagInfo is a flag.
type flagInfo struct {
	Name   string `json:"name"`
	Kind   string `json:"kind"` // the word for what it takes
	Usage  string `json:"usage"`
	Stands string `json:"stands,omitempty"` // what holds when it is not given
	Switch bool   `json:"switch,omitempty"`
	Many   bool   `json:"many,omitempty"` // it may be given more than once
}

// headings are those that have flags of rehearse, but for what the command line alone sets.
func headings(all []Heading) (found []heading) {
	var asked ask.Rehearse
	flags := flagSet(&asked)
	for _, h := range all {
		under := heading{Title: h.Title}
		for _, name := range h.Flags {
			f := flags.Lookup(name)
			if f == nil || slices.Contains(notFromThePage, name) {
				continue
			}
			kind, usage := pflag.UnquoteUsage(f)
			under.Flags = append(under.Flags, flagInfo{Name: name, Kind: kind, Usage: usage, Stands: f.DefValue,
				Switch: f.Value.Type() == "bool", Many: ask.IsList(f)})
		}
		if len(under.Flags) > 0 {
			found = append(found, under)
		}
	}
	return found
}

// beginning is what the page begins with.
type beginning struct {
	Name     string             `json:"name"` // the artwork's
	WidthPx  int                `json:"width_px"`
	HeightPx int                `json:"height_px"`
	Folder   string             `json:"folder"` // where its job goes
	Words    []Word             `json:"words"`
	Headings []heading          `json:"headings"`
	Limits   []ask.Alternatives `json:"limits"`
	Takes    []take             `json:"takes"`
	Error    *errorRecord       `json:"error,omitempty"`
}

// start answers with the beginning.
func (s *server) start(w http.ResponseWriter, _ *http.Request) { answerJSON(w, s.beginning()) }

func (s *server) beginning() beginning {
	subject, art := s.bench.now()
	b := beginning{Name: filepath.Base(subject.Artwork), Folder: subject.Folder, Words: wordsOf(subject.Words),
		Headings: s.flags, Limits: ask.AllAlternatives(), Takes: []take{}}
	whole, err := art.decoded()
	if err == nil {
		b.WidthPx, b.HeightPx = whole.Size()
		b.Takes, err = readTakes(subject)
	}
	if err != nil {
		e := newErrorRecord(err, nil)
		b.Error = &e
	}
	return b
}
