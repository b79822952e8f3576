package rehearsal

import (
	"context"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/seamsight"
)

// verdictsRecord is whether the seams show.
type verdictsRecord struct {
	head
	Count   report.SeamCount `json:"count"`
	Summary string           `json:"summary"`
	Seams   []seamVerdict    `json:"seams"`
	Worst   []worstSeam      `json:"worst"` // the plainest first
}

// seamVerdict is a seam in pieces of one verdict each.
type seamVerdict struct {
	layout.Seam
	Verdict string      `json:"verdict"`
	Pieces  []seamPiece `json:"pieces"`
}

// seamPiece is a stretch along a seam, board mm.
type seamPiece struct {
	FromMM  float64 `json:"from_mm"`
	ToMM    float64 `json:"to_mm"`
	Verdict string  `json:"verdict"`
}

// worstSeam says where a seam shows most, and what hides it.
type worstSeam struct {
	Between [2]string         `json:"between"`
	Where   string            `json:"where"`
	Verdict string            `json:"verdict"`
	Times   float64           `json:"over_threshold"`
	Frame   layout.FramePoint `json:"frame_px"`
	Remedy  string            `json:"remedy"`
}

// mostWorst is how many seams are told of one by one.
const mostWorst = 5

func newVerdictsRecord(ctx context.Context, p layout.Plan, model *seamsight.Model) verdictsRecord {
	seams := model.Seams()
	count := seamsight.Count(seams)
	r := verdictsRecord{head: head{Kind: "verdicts"}, Count: count, Summary: count.Summary().String(),
		Seams: []seamVerdict{}, Worst: []worstSeam{}}
	for _, s := range seams {
		v := seamVerdict{Seam: s.Seam, Verdict: s.Verdict().String()}
		for _, sample := range s.Samples {
			verdict := sample.Verdict().String()
			if n := len(v.Pieces); n > 0 && v.Pieces[n-1].Verdict == verdict {
				v.Pieces[n-1].ToMM = sample.ToMM
				continue
			}
			v.Pieces = append(v.Pieces, seamPiece{sample.FromMM, sample.ToMM, verdict})
		}
		r.Seams = append(r.Seams, v)
	}
	var shown []seamsight.Ranked
	for _, view := range seamsight.WorstFirst(seams) {
		if view.Sighting().Verdict > seamsight.Hidden && len(shown) < mostWorst {
			shown = append(shown, view)
		}
	}
	if ctx.Err() != nil {
		return r // nobody reads it
	}
	for i, remedy := range model.Remedies(shown) {
		view := shown[i]
		r.Worst = append(r.Worst, worstSeam{Between: view.Seam.Between, Where: view.Path.String(),
			Verdict: view.Sighting().Verdict.String(), Times: view.Sighting().OverThreshold(), Frame: view.Sighting().Frame,
			Remedy: report.SeamRemedy(remedy).Text().String()})
	}
	return r
}
