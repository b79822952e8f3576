package report

import (
	"fmt"
	"strings"
)

// Text is words and figures in their order.
type Text []Piece

// Piece is words or a figure.
type Piece struct {
	Words  string
	Figure *Figure // in place of words
	Strong bool    // what the eye should find
}

// strongly marks a piece of say's as what the eye should find.
type strongly struct{ what any }

// strong marks words, a figure or a text.
func strong(what any) strongly { return strongly{what} }

// say puts a text together: each %s in the format stands for the next of the parts, which are strings,
// figures, texts, or any of these marked strong.
func say(format string, parts ...any) Text {
	var t Text
	for _, part := range parts {
		before, after, _ := strings.Cut(format, "%s")
		t = t.add(before, false).add(part, false)
		format = after
	}
	return t.add(format, false)
}

func (t Text) add(part any, marked bool) Text {
	switch p := part.(type) {
	case strongly:
		return t.add(p.what, true)
	case Figure:
		return append(t, Piece{Figure: &p, Strong: marked})
	case Text:
		for _, piece := range p {
			piece.Strong = piece.Strong || marked
			t = append(t, piece)
		}
		return t
	case string:
		if p != "" {
			t = append(t, Piece{Words: p, Strong: marked})
		}
		return t
	}
	return t.add(fmt.Sprint(part), marked)
}

// join puts texts one behind the other with words between.
func join(texts []Text, between string) Text {
	var all Text
	for i, t := range texts {
		if i > 0 {
			all = all.add(between, false)
		}
		all = all.add(t, false)
	}
	return all
}

// String is the text in plain letters.
func (t Text) String() string {
	var b strings.Builder
	for _, p := range t {
		if p.Figure != nil {
			b.WriteString(p.Figure.String())
		} else {
			b.WriteString(p.Words)
		}
	}
	return b.String()
}

// Figures are those that the text tells.
func (t Text) Figures() []Figure {
	var all []Figure
	for _, p := range t {
		if p.Figure != nil {
			all = append(all, *p.Figure)
		}
	}
	return all
}

// size is a width and a height in one: "889.2 x 592.8 mm".
func size(width, height Figure) Text {
	width.Unit = Bare
	return say("%s x %s", width, height)
}
