package seammap

import (
	"slices"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/ink"
	"dropsheet/tile/seamsight"
)

// note is a sample of a line with a word about it, or a line of text alone.
type note struct {
	at     ink.Point // of the baseline's start, from the notes' top left
	sample *ink.Line
	text   string
}

// Measures of the notes, in pixels.
const (
	samplePx        = 80  // of line
	textAfterPx     = 98  // where the words begin after a sample
	columnGapPx     = 56  // between columns
	captionPx       = 420 // the narrowest caption that stands beside the key
	widestCaptionPx = 760 // longer lines are hard to follow
	entryGapPx      = 7
	paragraphGapPx  = 14
)

// key says what each line is.
func (m seamMap) key() []note {
	body := m.body()
	edge, outline := edgeLine, outlineLine
	entries := []note{
		{sample: &edge, text: "the picture's edge"},
		{sample: &outline, text: "the " + body + "'s edge"},
	}
	if m.surrounded() {
		board := boardLine
		entries[0].text += ", " + set(report.Size(m.plan.Picture.WidthMM, m.plan.Picture.HeightMM))
		entries = slices.Insert(entries, 1, note{sample: &board, text: "the board's edge"})
	}
	if m.unfilled() {
		paper := paperLine
		entries = slices.Insert(entries, 1, note{sample: &paper, text: "the paper's edge"})
	}
	if len(m.frameOnBoard()) > 0 {
		frame := frameLine
		entries = append(entries, note{sample: &frame, text: "what the frame sees beside the " + body})
	}
	if len(m.plan.Seams) > 0 {
		entries = append(seamKey(), entries...)
	}
	for _, mark := range m.marks {
		text := "fill " + fillText(mark.fill)
		if mark.own {
			text = "picture's " + text
		}
		if reachMM, ok := m.board.reachMM(mark.fill); ok {
			text += ": " + set(report.Length(reachMM).Text())
			if downMM, ok := m.board.sight.ReachDownMM(mark.fill); ok && m.board.sight.Drop.Oblate() {
				text += " across, " + set(report.Length(downMM).Text()) + " down"
			}
		} else {
			text += ": off the board"
		}
		entries = append(entries, note{sample: &mark.line, text: text})
	}
	return entries
}

// seamKey says what the verdicts' lines are, the plainest seam first.
func seamKey() []note {
	texts := [...]string{
		seamsight.OutOfSight: "seam out of the frame's sight",
		seamsight.Hidden:     "seam that is hidden",
		seamsight.Faint:      "seam that shows faintly",
		seamsight.Shows:      "seam that shows",
	}
	var entries []note
	for v := len(texts) - 1; v >= 0; v-- {
		line := seamLines[v]
		entries = append(entries, note{sample: &line, text: texts[v]})
	}
	return entries
}

// caption is what one sees, a paragraph each.
func (m seamMap) caption() []string {
	body := m.body()
	paragraphs := []string{m.tell("hangs.looks", "hangs.why"), m.tell("seams.none", "seams.bend", "seams.along")}
	if m.plan.Picture.Look != layout.Bulged {
		paragraphs = append(paragraphs, m.tell("look.bend"))
	}
	if turn := m.tell("look.turn"); turn != "" {
		paragraphs = append(paragraphs, turn)
	}
	if bare := m.tell("print.bare"); bare != "" {
		paragraphs = append(paragraphs, bare+" The board is bare there.")
	}
	if len(m.plan.Seams) > 0 {
		paragraphs = append(paragraphs, "On the board each seam has the line of its worse view, beside the "+body+
			" or in it. dropsheet seams tells both, and what would hide each.")
	}
	paragraphs = append(paragraphs, m.tell("place.rim_mirrors"))
	return append(paragraphs, "Fill is the share of the "+body+"'s visible radius. Beside it stands how far from the "+
		"board's middle it looks there.")
}

// notes lays the key and the caption out in columns, as many as the width holds, and returns the height that they take.
func (m seamMap) notes(widthPx float64) (notes []note, heightPx float64) {
	face, entries := m.faces.text, m.key()
	keyPx := 0.0
	for _, e := range entries {
		keyPx = max(keyPx, textAfterPx+face.WidthPx(e.text))
	}
	x, y := 0.0, 0.0
	write := func(sample *ink.Line, indent, columnPx float64, text string) {
		for i, line := range face.Wrap(text, columnPx-indent) {
			n := note{at: ink.Point{X: x + indent, Y: y + face.CapPx()}, text: line}
			if i == 0 {
				n.sample = sample
			}
			notes = append(notes, n)
			y += face.LinePx()
		}
		heightPx = max(heightPx, y)
	}
	keys := 1
	if widthPx >= 2*(keyPx+columnGapPx)+captionPx {
		keys = 2
	}
	for i, e := range entries {
		if keys == 2 && i == (len(entries)+1)/2 {
			x, y = keyPx+columnGapPx, 0
		}
		write(e.sample, textAfterPx, keyPx, e.text)
		y += entryGapPx
	}
	if widthPx-x >= keyPx+columnGapPx+captionPx {
		x, y = x+keyPx+columnGapPx, 0
	}
	for _, paragraph := range m.caption() {
		if y > 0 {
			y += paragraphGapPx
		}
		write(nil, 0, min(widthPx-x, widestCaptionPx), paragraph)
	}
	return notes, heightPx
}

// drawNotes draws what notes laid out, from a point at the top left.
func (m seamMap) drawNotes(at ink.Point, notes []note) {
	for _, n := range notes {
		start := ink.Point{X: at.X + n.at.X, Y: at.Y + n.at.Y}
		m.canvas.Text(m.faces.text, start, black, n.text)
		if n.sample != nil {
			y := start.Y - m.faces.text.CapPx()/2
			m.canvas.Draw(ink.Stroke{Path: ink.Path{{X: start.X - textAfterPx, Y: y},
				{X: start.X - textAfterPx + samplePx, Y: y}}, Line: *n.sample})
		}
	}
}
