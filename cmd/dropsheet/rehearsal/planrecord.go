package rehearsal

import (
	"math"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout"
	"dropsheet/layout/report"
)

// planRecord is where everything is.
type planRecord struct {
	head
	Placed bool        `json:"placed"` // the seams are where make puts them
	Plan   layout.Plan `json:"plan"`
	Board  string      `json:"board"` // names the board's picture
	// in the drop's plane, mm
	Outline layout.Size     `json:"outline_mm"` // half the drop's visible width and height; 0 where it has no end
	Drops   []layout.Point  `json:"drops_mm"`
	InDrop  layout.Size     `json:"picture_in_drop_mm"` // the picture's width and height by what its middle measures
	Avoid   []layout.Circle `json:"avoid_mm"`           // the places to avoid, on the board
	Stop    string          `json:"stop"`
	Sheets  string          `json:"sheets"`
	Make    string          `json:"make"`  // the command line that makes this job
	Proof   string          `json:"proof"` // and the one that renders this frame of it
}

func newPlanRecord(s *set, p layout.Plan, words []Word, placed bool) planRecord {
	r := planRecord{head: head{Kind: "plan"}, Placed: placed, Plan: p, Board: boardKey(s, p), Drops: s.asked.Drops,
		Stop: report.Stop(p.Camera.FNumber).String()}
	r.Outline.WidthMM, r.Outline.HeightMM = p.Sight().OutlineMM()
	if math.IsInf(r.Outline.WidthMM, 0) {
		r.Outline.WidthMM = 0
	}
	if math.IsInf(r.Outline.HeightMM, 0) {
		r.Outline.HeightMM = 0
	}
	if len(r.Drops) == 0 {
		r.Drops = []layout.Point{{}}
	}
	r.Avoid = []layout.Circle{}
	for _, a := range s.order.Avoid {
		r.Avoid = append(r.Avoid, p.CircleOnBoard(a.X, a.Y, a.Radius))
	}
	r.InDrop = inDrop(p)
	if sheets, ok := report.Of(p).Fact("print.sheets"); ok {
		r.Sheets = sheets.Text.String()
	}
	r.Make, r.Proof = commandLines(s.subject, words)
	return r
}

// inDrop is how wide and high the picture would be in the drop if all of it were as large as its middle.
func inDrop(p layout.Plan) layout.Size {
	const near = 0.02 // of the drop's radius
	sight := p.Sight()
	reachMM, ok := sight.ReachMM(near)
	if !ok || reachMM == 0 {
		return layout.Size{}
	}
	k := near * sight.ApparentRadiusMM() / reachMM
	return layout.Size{WidthMM: k * p.Picture.FlatWidthMM, HeightMM: k * p.Picture.FlatHeightMM}
}

// commandLines are those that make the job and render its frame.
func commandLines(subject Subject, words []Word) (makeLine, proofLine string) {
	var m ask.Make
	makes := pflag.NewFlagSet("make", pflag.ContinueOnError)
	m.Register(makes)
	out := Word{"out", subject.Folder}
	words = append(subject.fixed(), words...)
	makeLine = commandLine("make", subject.Artwork, makes, append(known(makes, words), out))

	// Of what make does not take, proof does.
	var p ask.Proof
	proofs := pflag.NewFlagSet("proof", pflag.ContinueOnError)
	p.Register(proofs)
	var only []Word
	for _, w := range words {
		if makes.Lookup(w.Flag()) == nil {
			only = append(only, w)
		}
	}
	proofLine = commandLine("proof", subject.Folder, proofs, only)
	return makeLine, proofLine
}
