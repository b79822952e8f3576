package main

import (
	"fmt"
	"strings"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// coverageReport is what the frame sees of the board, with what mends it, for programs.
type coverageReport struct {
	shot.Coverage
	Remedies shot.Remedies `json:"remedies"`
}

func newCoverageReport(p layout.Plan) coverageReport {
	return coverageReport{shot.Of(p).Coverage(), coverageRemedies(p)}
}

// coverageRemedies are the plan's; where what is printed ends short of the board's edges no larger or nearer
// print fills the frame for certain, and a surround alone does.
func coverageRemedies(p layout.Plan) shot.Remedies {
	r := shot.Of(p).CoverageRemedies()
	if !p.Filled() {
		r.Fill, r.Nearer, r.Further = nil, nil, nil
	}
	return r
}

// coverageLines says what surrounds the picture, what the frame sees of the board, and how far the drop may
// travel. A line without a name goes on with the one before.
func coverageLines(p layout.Plan) [][2]string {
	var lines [][2]string
	say := func(what, format string, args ...any) {
		lines = append(lines, [2]string{what, fmt.Sprintf(format, args...)})
	}
	b := p.Backdrop
	switch beyond := b.WidthMM > p.Picture.WidthMM || b.HeightMM > p.Picture.HeightMM; {
	case beyond && b.Surround == layout.Stretch:
		say("surround", "the picture's edge goes on, to a backdrop of %.1f x %.1f mm", b.WidthMM, b.HeightMM)
	case beyond:
		say("surround", "%s, to a backdrop of %.1f x %.1f mm", b.Surround, b.WidthMM, b.HeightMM)
	case b.Surround != "" && !p.Picture.Plain():
		say("surround", "%s, in what the picture leaves of the backdrop", b.Surround)
	case b.Surround != "":
		say("surround", "none is needed: the picture fills the frame by itself")
	}

	c := shot.Of(p).Coverage()
	sees := fmt.Sprintf("the frame takes in %.1f x %.1f mm of the board's plane, %.1f %% of the backdrop",
		c.Sees.WidthMM, c.Sees.HeightMM, 100*c.BackdropShare)
	if c.Covered() && c.PrintEnds == nil {
		sees += "; no edge of the board shows"
	}
	say("coverage", "%s", sees)
	if !c.Covered() {
		say("", "%s", edgesText(p.Camera, c))
	}
	if c.PrintEnds != nil {
		say("", "%s", printEndsText(p, c))
	}
	if !c.Covered() {
		for _, remedy := range remedyTexts(p) {
			say("", "%s", remedy)
		}
	}
	for i, text := range travelTexts(p) {
		if i == 0 {
			say("travel", "%s", text)
		} else {
			say("", "%s", text)
		}
	}
	return lines
}

// printEndsText says where the print ends inside the frame, and what fills the rest.
func printEndsText(p layout.Plan, c shot.Coverage) string {
	ends := c.PrintEnds
	var parts []string
	for _, e := range ends.Edges {
		axis := "x"
		if e.Side == "top" || e.Side == "bottom" {
			axis = "y"
		}
		parts = append(parts, fmt.Sprintf("%s at %s = %.0f px at the furthest", e.Side, axis, e.AtPx))
	}
	text := "the print ends inside the frame: " + strings.Join(parts, ", ")
	switch {
	case len(parts) == 0 && c.Covered():
		text += "in its corners"
	case len(parts) == 0:
		text += "short of the board's corners"
	}
	if ends.Share == 0 {
		text += "; only the blur of its edge shows"
	} else {
		text += fmt.Sprintf("; %.0f %% of what the frame sees past the %s is not printed", 100*ends.Share, noun(p))
	}
	if p.Backdrop.FillOnly {
		return text + ": --surround " + string(p.Backdrop.Surround) + " in place of --background fills it"
	}
	text += ": --surround black fills it"
	if p.Picture.Fit == layout.Inside { // else the picture fills the view by itself
		text += ", --background black only what the " + noun(p) + " sees"
	}
	return text
}

// edgesText says which edges of the board show, and where.
func edgesText(camera layout.Camera, c shot.Coverage) string {
	var parts []string
	for i := 0; i < len(c.Edges); i += 2 { // opposite edges stand together
		a, b := c.Edges[i], c.Edges[i+1]
		axis, px := "x", camera.WidthPx
		if a.Side == "top" {
			axis, px = "y", camera.HeightPx
		}
		if a.AtPx < 0 {
			parts = append(parts, fmt.Sprintf("%s and %s only as a blur, from %.0f px outside the frame", a.Side, b.Side,
				b.AtPx-float64(px)))
			continue
		}
		parts = append(parts, fmt.Sprintf("%s and %s at %s = %.0f and %.0f px", a.Side, b.Side, axis, a.AtPx, b.AtPx))
	}
	return "the board's edge shows: " + strings.Join(parts, ", ")
}

// remedyTexts says what gets the board's edge out of the frame, in words that can be asked for.
func remedyTexts(p layout.Plan) []string {
	r := coverageRemedies(p)
	var texts []string
	if x := r.Fill; x != nil {
		texts = append(texts, "print larger: "+askFor(x))
	}
	if x := r.Nearer; x != nil {
		texts = append(texts, "hang it nearer: "+askFor(x))
	}
	if x := r.Further; x != nil {
		texts = append(texts, "hang it further off: "+askFor(x))
	}
	if x := r.Surround; x != nil {
		texts = append(texts, "surround it: "+askForSurround(p, x))
	}
	if len(texts) == 0 && p.Filled() {
		return []string{"no print, distance or surround of up to 500 sheets fills the frame: take a narrower one"}
	}
	return texts
}

// askFor is how to ask for a remedy, and what comes of it.
func askFor(r *shot.Remedy) string {
	return fmt.Sprintf("--distance %.1fmm --print-size %.1fx%.1fmm, fill %.3f, %d sheets at most", r.DistanceMM,
		r.Print.WidthMM, r.Print.HeightMM, r.Fill, r.SheetsAtMost)
}

// askForSurround is how to ask for this print in a larger surround: of the kind that there is, or with the
// picture's edge going on.
func askForSurround(p layout.Plan, r *shot.Remedy) string {
	return fmt.Sprintf("--distance %.1fmm --print-size %.1fx%.1fmm --surround %s --surround-size %.0fx%.0fmm, %d "+
		"sheets at most",
		r.DistanceMM, r.Print.WidthMM, r.Print.HeightMM, shot.Of(p).SurroundKind(), r.Backdrop.WidthMM, r.Backdrop.HeightMM,
		r.SheetsAtMost)
}
