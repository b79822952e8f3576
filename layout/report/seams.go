package report

// seamsBent tells what the drop does to the seams.
func (r *Report) seamsBent() []Fact {
	switch {
	case len(r.shot.Seams) == 0:
		return []Fact{{Key: "seams.none", Text: say("one sheet holds the whole picture: there is no seam")}}
	case r.shot.Drop.Body.Rod():
		return []Fact{{Key: "seams.bend", Text: say("across the rod the seams crowd toward its edges")},
			{Key: "seams.along", Text: say("along the rod nothing is squeezed, so that only a short stretch of the " +
				"board shows")}}
	}
	return []Fact{{Key: "seams.bend", Text: say("the %s bends the seams round its middle, where it shows them "+
		"largest, and "+
		"crowds them toward its rim", r.body)}}
}

// SeamCount is how many seams have which verdict. A seam counts once, where it shows most in the frame.
type SeamCount struct {
	Shows      int `json:"show"`
	Faint      int `json:"faint"`
	Hidden     int `json:"hidden"`
	OutOfSight int `json:"out_of_sight"`
}

func (n SeamCount) all() int { return n.Shows + n.Faint + n.Hidden + n.OutOfSight }

// Seen says how many of the seams are seen.
func (n SeamCount) Seen() Text {
	return say("%s of %s show in the frame, %s more faintly", seams("show", n.Shows), whole("", float64(n.all()), Bare),
		seams("faint", n.Faint))
}

// Summary counts the seams by their verdict.
func (n SeamCount) Summary() Text {
	if n.all() == 0 {
		return say("there are none: one sheet holds the whole backdrop")
	}
	return say("%s; %s hidden, %s out of the frame's sight", n.Seen(), seams("hidden", n.Hidden),
		seams("out_of_sight", n.OutOfSight))
}

// seams is a count of seams, by its name in JSON.
func seams(name string, n int) Figure { return whole("seams."+name, float64(n), Bare) }

// SeamRemedy is what would hide a seam, each way by itself; 0 for a way that does not.
type SeamRemedy struct {
	TouchUpLevel int     // sRGB level of the grey that its edge should have
	SeamMM       float64 // a bare edge no wider than that
	OpenTo       float64 // f-numbers
	CloseTo      float64
	FurtherTimes float64 // as far away, and as large
}

// Text says what hides the seam.
func (m SeamRemedy) Text() Text {
	ways := []Text{say("%s pencil (%s) on its edge", pencil(m.TouchUpLevel), whole("", float64(m.TouchUpLevel), Bare))}
	if m.SeamMM > 0 {
		ways = append(ways, say("a gap under %s", Figure{Value: m.SeamMM, Unit: MM, Decimals: 2, rounds: down}))
	}
	for _, to := range []float64{m.OpenTo, m.CloseTo} {
		if to > 0 {
			ways = append(ways, say("%s", stop("", to)))
		}
	}
	if m.FurtherTimes > 0 {
		ways = append(ways, say("%s times the print's size and distance",
			Figure{Value: m.FurtherTimes, Decimals: 1, rounds: up}))
	}
	last := len(ways) - 1
	if last == 0 {
		return say("hide it with %s", ways[0])
	}
	return say("hide it with %s, or %s", join(ways[:last], ", "), ways[last])
}

// SeamSmear says by how much the drop smears, which the sight of seams leaves out; nil where it does not, or where that
// is not known.
func (r *Report) SeamSmear() Text {
	m := r.motion()
	if m == nil || m.Smear == nil || m.Smear.SmearPx < 1 {
		return nil
	}
	return say("the %s smears by %s, which is not counted here: in it seams show less than is told", r.body,
		blur("shot.smear_px", m.Smear.SmearPx))
}

// RemedyNotes say what the words of remedies mean, a line each.
func RemedyNotes() []Text {
	return []Text{
		say("pencil: its grey from 0, black, to 255, white"),
		say("stop: it blurs the picture with the seam; size says how much"),
		say("or move the seam: make --seams least slides seams to where they show least, --avoid keeps them out of a place"),
	}
}

// pencil names the grey of a level.
func pencil(level int) string {
	for _, p := range []struct {
		below int
		name  string
	}{{40, "black"}, {100, "dark grey"}, {170, "mid grey"}, {230, "light grey"}} {
		if level < p.below {
			return p.name
		}
	}
	return "white"
}
