package main

import (
	"fmt"
	"strings"

	"dropsheet/layout"
)

// coverageReport is what the frame sees of the board, with what mends it, for programs.
type coverageReport struct {
	layout.Coverage
	Remedies layout.Remedies `json:"remedies"`
}

func newCoverageReport(p layout.Plan) coverageReport {
	return coverageReport{p.Coverage(), p.CoverageRemedies()}
}

// coverageLines says what surrounds the picture, what the frame sees of the board, and how far the drop may travel. A line without a name goes on
// with the one before.
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
	case b.Surround != "":
		say("surround", "none is needed: the picture fills the frame by itself")
	}

	c := p.Coverage()
	sees := fmt.Sprintf("the frame takes in %.1f x %.1f mm of the board's plane, %.1f %% of the backdrop", c.Sees.WidthMM, c.Sees.HeightMM, 100*c.BackdropShare)
	if c.Covered() {
		say("coverage", "%s; no edge of the board shows", sees)
	} else {
		say("coverage", "%s", sees)
		say("", "%s", edgesText(p.Camera, c))
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

// edgesText says which edges of the board show, and where.
func edgesText(camera layout.Camera, c layout.Coverage) string {
	var parts []string
	for i := 0; i < len(c.Edges); i += 2 { // opposite edges stand together
		a, b := c.Edges[i], c.Edges[i+1]
		axis, px := "x", camera.WidthPx
		if a.Side == "top" {
			axis, px = "y", camera.HeightPx
		}
		if a.AtPx < 0 {
			parts = append(parts, fmt.Sprintf("%s and %s only as a blur, from %.0f px outside the frame", a.Side, b.Side, b.AtPx-float64(px)))
			continue
		}
		parts = append(parts, fmt.Sprintf("%s and %s at %s = %.0f and %.0f px", a.Side, b.Side, axis, a.AtPx, b.AtPx))
	}
	return "the board's edge shows: " + strings.Join(parts, ", ")
}

// remedyTexts says what gets the board's edge out of the frame, in words that can be asked for.
func remedyTexts(p layout.Plan) []string {
	r := p.CoverageRemedies()
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
	if len(texts) == 0 {
		return []string{"no print, distance or surround of up to 500 sheets fills the frame: take a narrower one"}
	}
	return texts
}

// askFor is how to ask for a remedy, and what comes of it.
func askFor(r *layout.Remedy) string {
	return fmt.Sprintf("--distance %.1fmm --print-size %.1fx%.1fmm, fill %.3f, %d sheets at most", r.DistanceMM, r.Print.WidthMM, r.Print.HeightMM, r.Fill, r.SheetsAtMost)
}

// askForSurround is how to ask for this print in a larger surround: of the kind that there is, or with the picture's edge going on.
func askForSurround(p layout.Plan, r *layout.Remedy) string {
	return fmt.Sprintf("--distance %.1fmm --print-size %.1fx%.1fmm --surround %s --surround-size %.0fx%.0fmm, %d sheets at most",
		r.DistanceMM, r.Print.WidthMM, r.Print.HeightMM, p.SurroundKind(), r.Backdrop.WidthMM, r.Backdrop.HeightMM, r.SheetsAtMost)
}
