package pdf

import (
	"unicode/utf8"

	"dropsheet/flip/units"
)

// Style is how text looks.
type Style struct {
	face   face
	Pt     float64 // size in points
	LeadMM float64 // from line to line
	Shade  Shade
}

// leadShare is from line to line as a share of the size, unless Lead says otherwise.
const leadShare = 1.36

// Sans is Go Regular in black.
func Sans(pt float64) Style { return Style{sans, pt, leadShare * units.PointsToMM(pt), Shade{}} }

// Mono is Go Mono in black.
func Mono(pt float64) Style { return Style{mono, pt, leadShare * units.PointsToMM(pt), Shade{}} }

// Bold is the style in bold. Mono has none, and stays as it is.
func (s Style) Bold() Style {
	if s.face == sans {
		s.face = sansBold
	}
	return s
}

// Lead is the style with a distance from line to line.
func (s Style) Lead(mm float64) Style {
	s.LeadMM = mm
	return s
}

// In is the style in a shade.
func (s Style) In(shade Shade) Style {
	s.Shade = shade
	return s
}

// At is the style in another size, its lead in proportion.
func (s Style) At(pt float64) Style {
	s.LeadMM *= pt / s.Pt
	s.Pt = pt
	return s
}

// SizeMM is the type's size.
func (s Style) SizeMM() float64 { return units.PointsToMM(s.Pt) }

// capShare is the height of the fonts' capitals and figures as a share of their size: 0.723 (CapHeight in their OS/2
// tables), rounded.
const capShare = 0.72

// CapMM is the height of its capitals and figures.
func (s Style) CapMM() float64 { return capShare * s.SizeMM() }

// Base is the baseline of a line whose box starts at y: its capitals stand in the middle of the box.
func (s Style) Base(yMM float64) float64 { return yMM + s.LeadMM/2 + s.CapMM()/2 }

// Width is how far a line of text goes, rounded by itself (float64) before anything is added to it: where a line breaks
// is then the same on processors that multiply and add in one step.
func (s Style) Width(text string) float64 { return float64(s.face.ems(text) * s.SizeMM()) }

// Fit shortens a text to widthMM: it ends in an ellipsis where it is longer.
func (s Style) Fit(widthMM float64, text string) string {
	const ellipsis = "\u2026"
	fits, used, room := 0, 0.0, widthMM-s.Width(ellipsis)
	for i, letter := range text {
		used += s.Width(string(letter))
		if used <= room {
			fits = i + utf8.RuneLen(letter)
		}
		if used > widthMM {
			if room < 0 {
				return ""
			}
			return text[:fits] + ellipsis
		}
	}
	return text
}
