package report

import (
	"strings"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// Report is a plan with what follows from it, worked out once.
type Report struct {
	shot        shot.Shot
	body        string // the word for what refracts
	rim         shot.DarkRim
	sensitivity shot.Sensitivity
	coverage    shot.Coverage
	remedies    shot.Remedies
	travel      shot.Travel
	resolution  shot.Resolution
	swings      *shot.Swing // nil for a rod
	sharp       shot.Sharpness
	light       *shot.LightFigures // nil without lamps
	facts       []Fact
}

// Of works out all that is told of a plan.
func Of(p layout.Plan) *Report {
	s := shot.Of(p)
	r := &Report{
		shot: s, body: Body(p.Drop), rim: s.DarkRim(), sensitivity: s.Sensitivity(), coverage: s.Coverage(),
		remedies: remedies(s),
		travel:   s.Travel(), resolution: s.Resolution(), sharp: s.Sharpness(), light: s.LightFigures(),
	}
	if swing, ok := s.Swing(); ok {
		r.swings = &swing
	}
	for _, topic := range []func() []Fact{
		r.drop, r.hangs, r.place, r.look, r.print, r.frame, r.covers, r.moves, r.sharpness, r.mains, r.lit,
	} {
		r.facts = append(r.facts, topic()...)
	}
	return r
}

// Facts are all facts in the order in which they are listed, or those of some topics: "sharp", "light".
func (r *Report) Facts(topics ...string) []Fact {
	if len(topics) == 0 {
		return r.facts
	}
	var some []Fact
	for _, t := range topics {
		for _, f := range r.facts {
			if topic, _, _ := strings.Cut(f.Key, "."); topic == t {
				some = append(some, f)
			}
		}
	}
	return some
}

// Fact is the fact of a key; ok is false where there is nothing to tell of it.
func (r *Report) Fact(key string) (f Fact, ok bool) {
	for _, f := range r.facts {
		if f.Key == key {
			return f, true
		}
	}
	return Fact{}, false
}
