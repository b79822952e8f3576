package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// sharpnessLines says whether any stop holds the drop's edge and the picture in it sharp together, and what
// the mains do to the light: a name with each line, empty where a line goes on. What to do about the mains is
// common practice.
func sharpnessLines(p layout.Plan) [][2]string {
	s, drop := shot.Of(p).Sharpness(), noun(p)
	var lines [][2]string
	add := func(name, format string, args ...any) {
		lines = append(lines, [2]string{name, fmt.Sprintf(format, args...)})
	}
	if s.Holds != nil {
		from, to := s.Holds.Marks()
		within := from + " holds"
		if from != to {
			within = from + " to " + to + " hold"
		}
		add("sharp", "%s the %s's edge and the picture in it within %.3g pixels", within, drop, s.SharpToPx)
	} else {
		add("sharp", "no stop holds the %s's edge and the picture in it within %.3g pixels", drop, s.SharpToPx)
	}
	add("", "the least blur is %.1f pixels, at %s: %.3f mm at the %s", s.Least.BlurPx, shot.StopMark(s.Least.FNumber),
		s.Least.AtDropMM, drop)
	if w := s.Wider; w != nil {
		add("", "a frame %s mm wide at the %s does it, at %s, and so does this one shrunk to %.0f pixels wide",
			up(w.FrameWidthMM), drop, shot.StopMark(w.FNumber), float64(p.Camera.WidthPx)*s.SharpToPx/s.Least.BlurPx)
		add("", "a longer lens from further off changes nothing as long as the frame is as wide")
	}
	if p.Drop.Body != flip.Ball {
		add("", "all this across the rod: along it the picture is seen far behind, and its blur is %.0f pixels at %s",
			currentStop(s).Best.Blur.Centre.SagittalPx, shot.StopMark(p.Camera.FNumber))
	}
	if len(s.Mains) > 0 {
		a, b := s.Mains[0], s.Mains[1]
		if a.FramesPerPulse > 1 {
			add("mains", "one pulse of %g Hz mains lasts %.3g frames, of %g Hz mains %.3g: brightness swings over them", a.Hz,
				a.FramesPerPulse, b.Hz, b.FramesPerPulse)
			add("", "take lamps that don't pulse: direct current, or high frequency")
		} else {
			add("mains", "a frame lasts %.3g pulses of %g Hz mains, %.3g of %g Hz mains", 1/a.FramesPerPulse, a.Hz,
				1/b.FramesPerPulse, b.Hz)
			add("", "brightness is steady where the shutter stays open for whole pulses")
		}
	}
	return lines
}

// currentStop is the plan's own stop.
func currentStop(s shot.Sharpness) shot.StopLine {
	for _, stop := range s.Stops {
		if stop.Current {
			return stop
		}
	}
	return shot.StopLine{} // the table always holds it
}

// writeSharpnessTable writes what each stop does, at the best focus, and at the plan's stop what other focuses do.
func writeSharpnessTable(w io.Writer, p layout.Plan) error {
	s := shot.Of(p).Sharpness()
	rod, rate := p.Drop.Body != flip.Ball, p.Camera.FrameRate > 0
	heads := []string{"stop", "light"}
	if rate {
		heads = append(heads, "frames/s")
	}
	heads = append(heads, "edge", "centre", "at fill")
	if rod {
		heads = append(heads, "along rod")
	}
	heads = append(heads, "backdrop")
	var b strings.Builder
	row := func(mark string, cells []string) {
		fmt.Fprintf(&b, "%s %-7s", mark, cells[0])
		for _, c := range cells[1:] {
			fmt.Fprintf(&b, " %9s", c)
		}
		b.WriteString("\n")
	}
	b.WriteString("\nSharpness: blur in frame pixels at the best focus, diffraction included; light in stops (> " +
		"the plan)\n")
	row(" ", heads)
	for _, stop := range s.Stops {
		centre, fill := p.PictureBlurs(stop.Best.Blur)
		cells := []string{shot.StopMark(stop.FNumber), signedStops(stop.ExposureStops)}
		if rate {
			cells = append(cells, rateWords(stop.FrameRate))
		}
		cells = append(cells, blurPx(stop.Best.Blur.EdgePx), blurPx(centre), blurPx(fill))
		if rod {
			cells = append(cells, blurPx(stop.Best.Blur.Centre.SagittalPx))
		}
		mark := " "
		if stop.Current {
			mark = ">"
		}
		row(mark, append(cells, blurPx(stop.Best.Blur.BackdropPx)))
	}
	current := currentStop(s)
	fmt.Fprintf(&b, "at %s, by focus (mm before the %s's middle):\n", shot.StopMark(current.FNumber), noun(p))
	for _, f := range []struct {
		name string
		at   shot.Focused
	}{{"edge", current.Edge}, {"best", current.Best}, {"picture", current.Picture}} {
		centre, fill := p.PictureBlurs(f.at.Blur)
		fmt.Fprintf(&b, "  %-7s %6.2f mm: edge %s, centre %s, at fill %s\n", f.name, p.Drop.CameraMM-f.at.FocusMM,
			blurPx(f.at.Blur.EdgePx), blurPx(centre), blurPx(fill))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// blurPx writes a blur: a tenth of a pixel counts below a hundred.
func blurPx(px float64) string {
	if px < 99.95 {
		return strconv.FormatFloat(px, 'f', 1, 64)
	}
	return strconv.FormatFloat(px, 'f', 0, 64)
}

// signedStops writes a difference in stops with its sign.
func signedStops(d float64) string {
	d = math.Round(d*10) / 10
	if d == 0 {
		return "0"
	}
	return strings.TrimSuffix(fmt.Sprintf("%+.1f", d), ".0")
}

// rateWords writes a frame rate: whole frames between a hundred and ten million, else three figures.
func rateWords(rate float64) string {
	if rate < 100 || rate >= 1e7 {
		return strconv.FormatFloat(rate, 'g', 3, 64)
	}
	return strconv.FormatFloat(rate, 'f', 0, 64)
}

// up writes a length of which less would not do: whole millimetres from 20 on, tenths below.
func up(mm float64) string {
	if mm < 20 {
		return strconv.FormatFloat(math.Ceil(mm*10)/10, 'f', 1, 64)
	}
	return strconv.FormatFloat(math.Ceil(mm), 'f', 0, 64)
}
