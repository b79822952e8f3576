package report

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
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

// Sentence is the text as a sentence of its own.
func (t Text) Sentence() Text { return t.Capital().add(".", false) }

// Capital is the text with a capital at its start. A stop, f/16, keeps its small letter.
func (t Text) Capital() Text {
	if len(t) == 0 || t[0].Figure != nil || t[0].Words == "" || strings.HasPrefix(t[0].Words, "f/") {
		return t
	}
	t = slices.Clone(t)
	first, size := utf8.DecodeRuneInString(t[0].Words)
	t[0].Words = string(unicode.ToUpper(first)) + t[0].Words[size:]
	return t
}

// Set puts the text together for type: figures keep their units on their line, and apostrophes and the signs for
// times and minus are those of type. Each piece is as each makes it.
func (t Text) Set(each func(text string, strong bool) string) string {
	const noBreak = "\u00a0"
	var b strings.Builder
	for i, p := range t {
		text := strings.ReplaceAll(p.Words, "'", "\u2019")
		switch {
		case p.Figure != nil:
			text = strings.ReplaceAll(p.Figure.String(), " ", noBreak)
			if after, negative := strings.CutPrefix(text, "-"); negative {
				text = "\u2013" + after
			}
		case p.Words == " x " && i > 0 && t[i-1].Figure != nil:
			text = noBreak + "\u00d7" + noBreak
		}
		b.WriteString(each(text, p.Strong))
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
