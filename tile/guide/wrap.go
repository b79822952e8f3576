package guide

import "strings"

// run is a piece of a line in one weight.
type run struct {
	text string
	bold bool
	font string // in place of the style's own, once the text is wrapped
}

// line is what stands on one line of wrapped text.
type line []run

// text is what stands on the line.
func (l line) text() string {
	var all strings.Builder
	for _, r := range l {
		all.WriteString(r.text)
	}
	return all.String()
}

// style is the style that a run is set in.
func (r run) style(s style) style {
	if r.bold {
		s = s.bold()
	}
	if r.font != "" {
		s.font = r.font
	}
	return s
}

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

// wrap breaks a text into lines no wider than widthMM, all in the font that holds the text. A word that is
// wider than that alone is broken where it must be.
func (b *book) wrap(s style, widthMM float64, text string) []line {
	s = s.holding(text)
	var lines []line
	var current line
	used, space := 0.0, b.width(s, " ")
	for _, word := range words(text) {
		wide := b.runsWidth(s, word)
		if len(current) > 0 && used+space+wide > widthMM {
			lines = append(lines, current)
			current, used = nil, 0
		}
		if len(current) > 0 {
			current, used = append(current, run{text: " "}), used+space
		}
		for wide > widthMM {
			head, tail := b.split(s, widthMM, word)
			lines = append(lines, head)
			word, wide = tail, b.runsWidth(s, tail)
		}
		current, used = append(current, word...), used+wide
	}
	if len(current) > 0 || len(lines) == 0 {
		lines = append(lines, current)
	}
	for i := range lines {
		lines[i] = lines[i].merged()
		for j := range lines[i] {
			lines[i][j].font = s.font
		}
	}
	return lines
}

func (b *book) runsWidth(s style, runs []run) float64 {
	sum := 0.0
	for _, r := range runs {
		sum += b.width(r.style(s), r.text)
	}
	return sum
}

// split takes as many letters off a word as fit, at least one.
func (b *book) split(s style, widthMM float64, word []run) (head line, tail []run) {
	used := 0.0
	for i, r := range word {
		for j, letter := range r.text {
			wide := b.width(r.style(s), string(letter))
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
func (l line) merged() line {
	var out line
	for _, r := range l {
		if n := len(out); n > 0 && (out[n-1].bold == r.bold || r.text == " ") {
			out[n-1].text += r.text
			continue
		}
		out = append(out, r)
	}
	return out
}

// putLine sets a wrapped line.
func (b *book) putLine(s style, x, base float64, l line) {
	for _, r := range l {
		b.put(r.style(s), x, base, r.text)
		x += b.width(r.style(s), r.text)
	}
}

// block sets wrapped text in a box of its own, outside the flow, and returns where it ends.
func (b *book) block(s style, x, y, widthMM float64, text string) (bottom float64) {
	for _, l := range b.wrap(s, widthMM, text) {
		b.putLine(s, x, s.base(y), l)
		y += s.lead
	}
	return y
}

// blockMM is the height that block would take.
func (b *book) blockMM(s style, widthMM float64, text string) float64 {
	return float64(len(b.wrap(s, widthMM, text))) * s.lead
}
