package pdf

import "strings"

// run is a piece of a line in one weight.
type run struct {
	text string
	bold bool
}

// TextLine is what stands on one line of wrapped text.
type TextLine []run

// Text is what stands on the line.
func (l TextLine) Text() string {
	var all strings.Builder
	for _, r := range l {
		all.WriteString(r.text)
	}
	return all.String()
}

// style is the style that a run is set in.
func (r run) style(s Style) Style {
	if r.bold {
		s = s.Bold()
	}
	return s
}

// Signs that switch to bold and back within a text. Printed keeps them out of what users write.
const (
	boldOn  = '\x01'
	boldOff = '\x02'
)

// Strong sets a part of a text that is to be wrapped in bold.
func Strong(text string) string { return string(boldOn) + text + string(boldOff) }

// words splits a text at its spaces; each word is one or more runs. No-break spaces hold words together.
func words(text string) [][]run {
	var all [][]run
	bold := false
	for _, word := range strings.Split(text, " ") {
		var runs []run
		var piece strings.Builder
		flush := func() {
			if piece.Len() > 0 {
				runs = append(runs, run{text: piece.String(), bold: bold})
				piece.Reset()
			}
		}
		for _, r := range word {
			switch r {
			case boldOn, boldOff:
				flush()
				bold = r == boldOn
			default:
				piece.WriteRune(r)
			}
		}
		flush()
		all = append(all, runs)
	}
	return all
}

// Wrap breaks a text into lines no wider than widthMM. A word that is wider than
// that alone is broken where it must be.
func (s Style) Wrap(widthMM float64, text string) []TextLine {
	var lines []TextLine
	var current TextLine
	used, space := 0.0, s.Width(" ")
	for _, word := range words(text) {
		wide := s.runsWidth(word)
		if len(current) > 0 && used+space+wide > widthMM {
			lines = append(lines, current)
			current, used = nil, 0
		}
		if len(current) > 0 {
			current, used = append(current, run{text: " "}), used+space
		}
		for wide > widthMM {
			head, tail := s.split(widthMM, word)
			lines = append(lines, head)
			word, wide = tail, s.runsWidth(tail)
		}
		current, used = append(current, word...), used+wide
	}
	if len(current) > 0 || len(lines) == 0 {
		lines = append(lines, current)
	}
	for i := range lines {
		lines[i] = lines[i].merged()
	}
	return lines
}

func (s Style) runsWidth(runs []run) float64 {
	sum := 0.0
	for _, r := range runs {
		sum += r.style(s).Width(r.text)
	}
	return sum
}

// split takes as many letters off a word as fit, at least one.
func (s Style) split(widthMM float64, word []run) (head TextLine, tail []run) {
	used := 0.0
	for i, r := range word {
		for j, letter := range r.text {
			wide := r.style(s).Width(string(letter))
			if used+wide > widthMM && (i > 0 || j > 0) {
				head = append(head, run{text: r.text[:j], bold: r.bold})
				return head, append([]run{{text: r.text[j:], bold: r.bold}}, word[i+1:]...)
			}
			used += wide
		}
		head = append(head, r)
	}
	return head, nil
}

// merged joins neighbouring runs of one weight; a space takes the weight of the run before it.
func (l TextLine) merged() TextLine {
	var out TextLine
	for _, r := range l {
		if n := len(out); n > 0 && (out[n-1].bold == r.bold || r.text == " ") {
			out[n-1].text += r.text
			continue
		}
		out = append(out, r)
	}
	return out
}
