package report

import (
	"strings"
	"sync"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// Report is a plan with what follows from it. Each of its figures is worked out when it is first asked for, and
// once.
type Report struct {
	shot        shot.Shot
	body        string // the word for what refracts
	rim         func() shot.DarkRim
	mirror      func() shot.MirroredRim
	sensitivity func() shot.Sensitivity
	coverage    func() shot.Coverage
	remedies    func() shot.Remedies
	travel      func() shot.Travel
	resolution  func() shot.Resolution
	swing       func() *shot.Swing // nil for what does not swing: rods, and solid balls
	sharp       func() shot.Sharpness
	stack       func() *shot.Stack        // nil for what falls, and where no stack will do
	stackable   func() *shot.Stackable    // nil for what falls, and where a stack will do
	fringePx    func() float64            // 0 where the material's dispersion is not known
	light       func() *shot.LightFigures // nil without lamps
	highlights  func() []shot.Highlight   // nil without lamps
	exposure    func() *shot.Exposure     // nil where ISO or exposure are not known
	choices     func() []layout.Choice
	motion      func() *shot.Motion // nil where the drop's speed is not known
	topics      []topic
	eitherWay   bool
}

// LiesEitherWay has the report say that the paper may lie the other way too, on as many sheets, and that the artwork
// decides. It must be told before anything is asked.
func (r *Report) LiesEitherWay() { r.eitherWay = true }

// topic is facts whose keys begin with its name, worked out together.
type topic struct {
	name  string
	facts func() []Fact
	aside bool // told only to those who ask for it: what one builds by
}

// Of is the report of a plan.
func Of(p layout.Plan) *Report {
	s := shot.Of(p)
	var r *Report
	r = &Report{
		shot: s, body: Body(p.Drop),
		rim: sync.OnceValue(s.DarkRim), mirror: sync.OnceValue(s.MirroredRim), sensitivity: sync.OnceValue(s.Sensitivity),
		coverage: sync.OnceValue(s.Coverage), remedies: sync.OnceValue(func() shot.Remedies { return remedies(s) }),
		travel: sync.OnceValue(s.Travel), resolution: sync.OnceValue(s.Resolution),
		swing: sync.OnceValue(func() *shot.Swing {
			if swing, ok := s.Swing(); ok && !Solid(p.Drop) {
				return &swing
			}
			return nil
		}),
		stack: sync.OnceValue(func() *shot.Stack {
			if !standsStill(p.Drop) {
				return nil
			}
			return s.StackNear()
		}),
		stackable: sync.OnceValue(func() *shot.Stackable {
			if !standsStill(p.Drop) || r.stack() != nil {
				return nil
			}
			least := s.Stackable()
			return &least
		}),
		sharp: sync.OnceValue(s.Sharpness), light: sync.OnceValue(s.LightFigures),
		highlights: sync.OnceValue(func() []shot.Highlight {
			if len(p.Lamps) == 0 {
				return nil
			}
			return s.Highlights()
		}),
		fringePx: sync.OnceValue(func() float64 {
			px, _ := s.Fringe()
			return px
		}),
		choices: sync.OnceValue(p.Choices), exposure: sync.OnceValue(s.Exposure), motion: sync.OnceValue(s.Motion),
	}
	for _, t := range []topic{
		{name: "drop", facts: r.drop}, {name: "hangs", facts: r.hangs}, {name: "place", facts: r.place},
		{name: "look", facts: r.look}, {name: "print", facts: r.print}, {name: "frame", facts: r.frame},
		{name: "detail", facts: r.detail}, {name: "coverage", facts: r.covers},
		{name: "remedies", facts: r.coverageRemedies}, {name: "travel", facts: r.moves},
		{name: "lux", facts: r.exposed}, {name: "motion", facts: r.moving},
		{name: "sharp", facts: r.sharpness}, {name: "focus", facts: r.focus}, {name: "mains", facts: r.mains},
		{name: "light", facts: r.lit}, {name: "glare", facts: r.glare}, {name: "highlights", facts: r.mirrored},
		{name: "lamps", facts: r.lampsInTheWay},
		{name: "build", facts: r.build, aside: true}, {name: "buy", facts: r.buy, aside: true},
		{name: "seams", facts: r.seamsBent, aside: true},
	} {
		facts := t.facts
		t.facts = sync.OnceValue(func() []Fact { return r.beside(facts()) })
		r.topics = append(r.topics, t)
	}
	return r
}

// Facts are the facts of some topics, "sharp" or "light", or all that are listed, in the order in which they are
// told.
func (r *Report) Facts(topics ...string) (facts []Fact) {
	if len(topics) == 0 {
		for _, t := range r.topics {
			if !t.aside {
				facts = append(facts, t.facts()...)
			}
		}
	}
	for _, name := range topics {
		facts = append(facts, r.about(name)...)
	}
	return facts
}

// Fact is the fact of a key, of several the first; ok is false where there is nothing to tell of it.
func (r *Report) Fact(key string) (f Fact, ok bool) {
	if all := r.All(key); len(all) > 0 {
		return all[0], true
	}
	return Fact{}, false
}

// All is the facts of a key: of each lamp that is mirrored, say.
func (r *Report) All(key string) (all []Fact) {
	name, _, _ := strings.Cut(key, ".")
	for _, f := range r.about(name) {
		if f.Key == key {
			all = append(all, f)
		}
	}
	return all
}

// about is the facts of a topic.
func (r *Report) about(name string) []Fact {
	for _, t := range r.topics {
		if t.name == name {
			return t.facts()
		}
	}
	return nil
}
