package rehearsal

import (
	"context"
	"image"
	"time"

	"dropsheet/layout"
	"dropsheet/tile/proof"
	"dropsheet/tile/seamsight"
)

// question is what the page asks: how the bench looks by these words.
type question struct {
	Words []Word `json:"words"`
	// SidePx is the longer side of the frame's place on the screen, in its pixels.
	SidePx int `json:"side_px"`
	// Board names the board whose picture the page has.
	Board string `json:"board"`
	// Draft asks for what a take that hangs there is compared by alone: its plan, figures and frame.
	Draft bool `json:"draft"`
}

// Bounds of the frame's longer side.
const (
	leastSidePx = 64
	mostSidePx  = 1920
)

// fewRays are enough to see what the frame will look like.
const fewRays = 4

// answer climbs the ladder: a draft at once, the figures, where the seams go and whether they show, and the frame with
// few rays and with all of them. The page leaves it as soon as it asks anew.
func (b *bench) answer(ctx context.Context, q question, to *records) {
	s, err := b.set(q.Words)
	if err != nil {
		to.write(newErrorRecord(err, q.Words), nil)
		return
	}
	side := max(leastSidePx, min(q.SidePx, mostSidePx))
	even := s.plans[0]
	if q.Draft {
		b.compared(ctx, q, to, s, side)
		return
	}
	rough := b.roughly(even)
	to.write(newPlanRecord(s, rough, q.Words, false), nil)
	b.draft(ctx, to, s, rough, side)
	if !rests(ctx) {
		return
	}
	to.write(newFiguresRecord(s, even), nil)
	if ctx.Err() != nil {
		return
	}
	plan, ok := withSeams(ctx, q, to, s)
	if !ok {
		return
	}
	b.keep(plan)
	to.write(newPlanRecord(s, plan, q.Words, true), nil)
	if key := boardKey(s, plan); key != q.Board {
		to.writeBoard(ctx, plan, s, key)
	}
	b.frame(ctx, to, s, plan, "few", side, fewRays)
	if ctx.Err() != nil {
		return
	}
	model := seamsight.New(plan, s.picture, max(s.asked.SeamWidthMM, leastSeamMM))
	to.write(newVerdictsRecord(ctx, plan, model), nil)
	b.frame(ctx, to, s, plan, "fine", side, s.asked.Samples)
}

// withSeams is the plan with its seams where they go; ok is false where that fails, which is told, or ctx ends.
func withSeams(ctx context.Context, q question, to *records, s *set) (plan layout.Plan, ok bool) {
	plan, _, err := s.order.PlaceSeams(ctx, s.plans, s.picture)
	if ctx.Err() != nil {
		return layout.Plan{}, false
	}
	if err != nil {
		to.write(newErrorRecord(err, q.Words), nil)
		return layout.Plan{}, false
	}
	return plan, true
}

// thumbnailPx is the longer side of a frame that is only looked at small: few rays will do.
const thumbnailPx = 480

// compared tells of a take by its words, beside what is on the bench.
func (b *bench) compared(ctx context.Context, q question, to *records, s *set, side int) {
	plan, ok := withSeams(ctx, q, to, s)
	if !ok {
		return
	}
	to.write(newPlanRecord(s, plan, q.Words, true), nil)
	to.write(newFiguresRecord(s, s.plans[0]), nil)
	b.frame(ctx, to, s, plan, "few", side, fewRays)
	if side > thumbnailPx && ctx.Err() == nil {
		b.frame(ctx, to, s, plan, "fine", side, s.asked.Samples)
	}
}

// handTime is how long a hand that moves takes to ask again, once it has a draft.
const handTime = 12 * time.Millisecond

// rests tells whether nothing new is asked for a while: else what takes longer would only be in the way.
func rests(ctx context.Context) bool {
	select {
	case <-ctx.Done():
		return false
	case <-time.After(handTime):
		return true
	}
}

// leastSeamMM is the narrowest seam that is judged: a proof may show none.
const leastSeamMM = 0.01

// draft renders a quick small frame.
func (b *bench) draft(ctx context.Context, to *records, s *set, p layout.Plan, most int) {
	side := min(most, b.pace.sidePx(p.Camera.WidthPx, p.Camera.HeightPx))
	began := time.Now()
	if frame := b.frame(ctx, to, s, p, "draft", side, 1); frame != nil {
		b.pace.took(len(frame.Pix)/4, time.Since(began))
	}
}

// frameRecord is followed by the frame's pixels, red, green, blue and opacity, row by row.
type frameRecord struct {
	head
	Rung     string `json:"rung"` // draft, few or fine
	WidthPx  int    `json:"width_px"`
	HeightPx int    `json:"height_px"`
	Rays     int    `json:"rays"`
}

// frame renders a frame; nil where ctx ends first.
func (b *bench) frame(ctx context.Context, to *records, s *set, p layout.Plan, rung string, side,
	rays int) *image.RGBA {
	scene := s.asked.Scene(p, s.picture)
	scene.Camera, scene.Samples = proof.Reduced(p.Camera, side), rays
	frame, err := scene.Render(ctx, nil)
	if err != nil {
		return nil
	}
	to.write(frameRecord{head{"frame", len(frame.Pix)}, rung, scene.Camera.WidthPx, scene.Camera.HeightPx, rays},
		frame.Pix)
	return frame
}
