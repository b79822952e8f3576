package rehearsal

import (
	"context"
	"errors"
	"fmt"

	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/proof"
)

// mostMoments is how many frames are rendered of a long passage, evenly apart.
const mostMoments = 40

// moments are the frames of a passage that are rendered, and how long each is shown: all of them together as long as
// the film of the passage is.
func moments(p layout.Plan, drops []layout.Point) (all []shot.Moment, eachS float64, err error) {
	passage, err := shot.Of(p).Passage(drops)
	if errors.Is(err, shot.ErrNotKnown) {
		flag := "frame-rate"
		if _, ok := p.Shooting.DropSpeedMMPerS(); !ok {
			flag = "fall"
		}
		err = flagError{flag, fmt.Errorf("%w\n"+
			"hint: say how far it has fallen, with --fall such as 20cm, and --frame-rate", err)}
	}
	if err != nil {
		return nil, 0, err
	}
	frames := passage.Frames()
	n := min(frames, mostMoments)
	for i := range n {
		all = append(all, passage.At((2*i+1)*frames/(2*n)))
	}
	return all, float64(frames) / p.Shooting.Playback() / float64(n), nil
}

// passageRecord comes before the frames of a passage.
type passageRecord struct {
	head
	Count int     `json:"count"`
	EachS float64 `json:"each_s"` // how long one of them is shown
}

// momentRecord is followed by its frame's pixels.
type momentRecord struct {
	head
	Index    int `json:"index"`
	WidthPx  int `json:"width_px"`
	HeightPx int `json:"height_px"`
}

// Passages are rendered smaller than the frame at rest, with few rays.
const (
	passageSidePx = 480
	passageRays   = 2
)

// play answers with the frames of the drop's passage.
func (b *bench) play(ctx context.Context, q question, to *records) {
	s, err := b.set(q.Words)
	if err != nil {
		to.write(newErrorRecord(err, q.Words), nil)
		return
	}
	plan := b.roughly(s.plans[0])
	all, eachS, err := moments(plan, s.asked.Drops)
	if err != nil {
		to.write(newErrorRecord(err, q.Words), nil)
		return
	}
	to.write(passageRecord{head{Kind: "passage"}, len(all), eachS}, nil)
	side := max(leastSidePx, min(q.SidePx, passageSidePx))
	scene := s.asked.Scene(plan, s.picture)
	scene.Camera, scene.Samples = proof.Reduced(plan.Camera, side), passageRays
	for i, m := range all {
		frame, err := scene.At(m).Render(ctx, nil)
		if err != nil {
			return
		}
		to.write(momentRecord{head{"moment", len(frame.Pix)}, i, scene.Camera.WidthPx, scene.Camera.HeightPx}, frame.Pix)
	}
}
