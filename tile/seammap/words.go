package seammap

import (
	"dropsheet/layout/report"
)

// set puts a text of the report together for the map.
func set(t report.Text) string { return t.Set(func(text string, _ bool) string { return text }) }

// tell is what the report has to tell under some keys, a sentence each; nothing where that is nothing.
func (m seamMap) tell(keys ...string) (text string) {
	for _, key := range keys {
		for _, f := range m.told.All(key) {
			if text != "" {
				text += " "
			}
			text += set(f.Text.Sentence())
		}
	}
	return text
}

// title is the map's title.
func (m seamMap) title() string {
	if len(m.plan.Seams) == 0 {
		return "Where the " + m.body() + " looks on the board"
	}
	return "Where the seams fall, and how plainly they show"
}

// scene tells in a line what stands where.
func (m seamMap) scene() string {
	f, _ := m.told.Fact("build.scene")
	return set(f.Text.Capital())
}

// body is the word for what refracts.
func (m seamMap) body() string { return report.Body(m.plan.Drop) }

// shows says what the picture of the drop shows.
func (m seamMap) shows() string {
	switch p := m.plan; {
	case len(p.Seams) == 0:
		return "the picture as it shows, turned right"
	case p.Picture.Framing.TurnDeg != 0:
		return "picture and seams as they show, names where they fit"
	case p.Drop.Body.Rod():
		return "picture turned right, seams squeezed across, names where they fit"
	default:
		return "picture upright, seams bent, names where they fit"
	}
}

// boardText tells the board and its sheets in a line.
func (m seamMap) boardText() string {
	b := m.plan.Backdrop
	return set(report.Size(b.WidthMM, b.HeightMM)) + ", " +
		set(report.Count(len(m.plan.Sheets), "sheet", "sheets").Text()) + " of " + b.Paper.Name
}
