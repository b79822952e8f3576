package report

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// Light is what the lamps do, for those who draw it; nil without lamps.
func (r *Report) Light() *shot.LightFigures { return r.light() }

// StopsBelow is how far a place is below the brightest, for drawings and tables.
func StopsBelow(stops float64) Text { return stopsBelow("", stops) }

func stopsBelow(path string, stops float64) Text {
	if stops >= layout.NoLightStops {
		return say("no light")
	}
	return say("%s", Figure{Path: path, Value: stops, Decimals: 2}.Column())
}

// Lamps is where each lamp stands, in words that can be measured on the set.
func (r *Report) Lamps() Table {
	t := Table{Heads: []string{"lamp", "from the middle", "", "before the board", "to the middle"}}
	way := func(mm float64, less, more string) Text {
		switch {
		case mm < 0:
			return say("%s %s", Length(-mm), less)
		case mm > 0:
			return say("%s %s", Length(mm), more)
		}
		return say("\u2013")
	}
	for i, l := range r.shot.Lamps {
		straight := math.Hypot(math.Hypot(l.XMM, l.YMM), l.ZMM)
		t.Rows = append(t.Rows, Row{Cells: []Text{say(fmt.Sprint(i + 1)), way(l.XMM, "left", "right"),
			way(l.YMM, "up", "down"), say("%s", Length(l.ZMM)), say("%s", Length(straight))}})
	}
	return t
}

// LitPlaces is the light at the places that a meter can be held to; empty without lamps.
func (r *Report) LitPlaces() Table {
	t := Table{Heads: []string{"place", "from left mm", "from top mm", "stops down", "light"}}
	f := r.light()
	if f == nil {
		return t
	}
	for _, p := range []struct {
		name, path string
		at         shot.LitPlace
	}{
		{"brightest", "brightest", f.Brightest}, {"middle", "centre", f.Centre}, {"top left", "corners.0", f.Corners[0]},
		{"top right", "corners.1", f.Corners[1]}, {"bottom left", "corners.2", f.Corners[2]},
		{"bottom right", "corners.3", f.Corners[3]}, {"darkest", "darkest", f.Darkest},
	} {
		path := "light." + p.path
		t.Rows = append(t.Rows, Row{Cells: []Text{say(p.name),
			say("%s", length(path+".board_mm.x", p.at.Board.XMM).Column()),
			say("%s", length(path+".board_mm.y", p.at.Board.YMM).Column()), stopsBelow(path+".stops", p.at.Stops),
			say("%s", whole(path+".share", p.at.Share, Percent))}})
	}
	return t
}
