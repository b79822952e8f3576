package rehearsal

import (
	"context"
	"errors"
	"math"
	"net/http"

	"dropsheet/flip/motion"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/layout/shot"
	"dropsheet/tile/proof"
)

// passage is the drop's way through the frame.
type passage struct {
	moments  []moment
	eachS    float64 // how long one of them is shown
	ofFrames float64 // how many frames the camera takes of it; 0 where the rate is not known
}

// moment is where the drop's centre is below the frame's middle, and how far out of round it is; 0 for as planned.
type moment struct{ downMM, heightOverWidth float64 }

const (
	// mostMoments is how many are rendered of a long passage, evenly apart.
	mostMoments = 40
	// unratedS is how long a passage is shown when the frame rate is not known.
	unratedS = 2.0
)

// newPassage follows the drop from where it comes into the frame to where it leaves it, and as it swings: when it does
// is not known beforehand, and it is taken to be round in the frame's middle. ok is false where the drop's speed is not
// known.
func newPassage(p layout.Plan) (all passage, ok bool) {
	speed, ok := p.Shooting.DropSpeedMMPerS()
	if !ok {
		return passage{}, false
	}
	_, halfHeightMM := p.Sight().OutlineMM()
	fromS, toS := passes(speed, p.Camera.FrameHeightMM/2+halfHeightMM)
	all.ofFrames = p.Camera.FrameRate * (toS - fromS)
	n, shownS := mostMoments, unratedS
	if all.ofFrames > 0 {
		n, shownS = int(max(1, min(math.Round(all.ofFrames), mostMoments))), all.ofFrames/p.Shooting.Playback()
	}
	all.eachS = shownS / float64(n)
	swing, swings := shot.Of(p).Swing()
	swings = swings && swing.PerSecond > 0 && !report.Solid(p.Drop)
	for i := range n {
		t := fromS + (toS-fromS)*(float64(i)+0.5)/float64(n)
		m := moment{downMM: speed*t + motion.GravityMMPerS2*t*t/2}
		if swings {
			m.heightOverWidth = math.Pow(swing.Flat.HeightOverWidth, math.Sin(2*math.Pi*swing.PerSecond*t))
		}
		all.moments = append(all.moments, m)
	}
	return all, true
}

// passes is when a drop that passes the frame's middle at time 0, downward at that speed, is so far above it and so far
// below. One too slow to come from above was let go on its way; one that rises and turns on it falls back.
func passes(speedMMPerS, offMM float64) (fromS, toS float64) {
	const g = motion.GravityMMPerS2
	v2, rises := speedMMPerS*speedMMPerS, 2*g*offMM
	atLower, atUpper := math.Sqrt(v2+rises), math.Sqrt(max(0, v2-rises))
	if speedMMPerS >= 0 {
		return (-speedMMPerS + atUpper) / g, (-speedMMPerS + atLower) / g
	}
	fromS = (-speedMMPerS - atLower) / g
	if v2 >= rises {
		return fromS, (-speedMMPerS - atUpper) / g
	}
	return fromS, (-speedMMPerS + atLower) / g
}

// passageRecord comes before the frames of a passage.
type passageRecord struct {
	head
	Count    int     `json:"count"`
	EachS    float64 `json:"each_s"`
	OfFrames float64 `json:"of_frames"`
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
func (s *server) play(w http.ResponseWriter, r *http.Request) {
	var q question
	if !receive(w, r, &q) {
		return
	}
	ctx, done, ok := s.turn.take(r.Context())
	if !ok {
		return
	}
	defer done()
	to, end := newRecords(ctx, w)
	defer end()
	s.bench.play(ctx, q, to)
}

func (b *bench) play(ctx context.Context, q question, to *records) {
	s, err := b.set(q.Words)
	if err != nil {
		to.write(newErrorRecord(err, q.Words), nil)
		return
	}
	plan := b.roughly(s.plans[0])
	all, ok := newPassage(plan)
	if !ok {
		to.write(newErrorRecord(flagError{"fall", errors.New("how fast the drop falls is not known: say how far it has " +
			"fallen, with --fall such as 20cm, or its --speed")}, nil), nil)
		return
	}
	to.write(passageRecord{head{Kind: "passage"}, len(all.moments), all.eachS, all.ofFrames}, nil)
	side := max(leastSidePx, min(q.SidePx, passageSidePx))
	for i, m := range all.moments {
		at := plan
		if m.heightOverWidth != 0 && math.Abs(m.heightOverWidth-1) > 1e-3 {
			if at, err = plan.WithShape(m.heightOverWidth); err != nil {
				at = plan // swung further than drops are traced
			}
		}
		scene := s.asked.Scene(at, s.picture)
		scene.Drops = passing(s.asked.Drops, m.downMM)
		scene.Camera, scene.Samples = proof.Reduced(plan.Camera, side), passageRays
		frame, err := scene.Render(ctx, nil)
		if err != nil {
			return
		}
		to.write(momentRecord{head{"moment", len(frame.Pix)}, i, scene.Camera.WidthPx, scene.Camera.HeightPx}, frame.Pix)
	}
}

// passing are the drops, of which the first passes the frame's middle, so far below where they are then.
func passing(drops []layout.Point, downMM float64) []layout.Point {
	if len(drops) == 0 {
		return []layout.Point{{YMM: downMM}}
	}
	var all []layout.Point
	for _, at := range drops {
		all = append(all, layout.Point{XMM: at.XMM, YMM: at.YMM - drops[0].YMM + downMM})
	}
	return all
}
