package seammap

import (
	"cmp"
	"slices"

	"dropsheet/layout"
	"dropsheet/tile/ink"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/texture"
)

// piecePx is the shortest stretch of a seam that gets a line of its own: shorter ones could not be told
// apart. The worst verdict in it counts.
const piecePx = 14

// seamStrokes are the lines for all seams as a view shows them, the plainer over the less plain, and the
// whole paths beside them.
func (m seamMap) seamStrokes(v view) (pieces []ink.Stroke, paths []ink.Path) {
	cells := map[string]layout.Rect{}
	for _, s := range m.plan.Sheets {
		cells[s.Name] = s.Cell
	}
	type piece struct {
		verdict seamsight.Verdict
		stroke  ink.Stroke
	}
	perSeam := make([][]piece, len(m.seams))
	paths = make([]ink.Path, len(m.seams))
	texture.Rows(len(m.seams), func(i int) {
		s := m.seams[i]
		path := v.line(s.Axis, s.AtMM, s.FromMM, s.ToMM)
		paths[i] = path
		room := roomPx(path, v, s.Axis, cells[s.Between[0]], cells[s.Between[1]])
		verdicts, parts := judged(v, s, path)
		for k, part := range parts {
			perSeam[i] = append(perSeam[i], piece{verdicts[k], ink.Stroke{Path: part, Line: seamLineFor(verdicts[k], room)}})
		}
	})
	all := slices.Concat(perSeam...)
	slices.SortStableFunc(all, func(a, b piece) int { return cmp.Compare(a.verdict, b.verdict) })
	for _, p := range all {
		pieces = append(pieces, p.stroke)
	}
	return pieces, paths
}

// judged cuts a seam's path where its verdict changes.
func judged(v view, s seamsight.Seam, path ink.Path) (verdicts []seamsight.Verdict, parts []ink.Path) {
	for _, step := range steps(path) {
		verdict := worst(v, s, step)
		last := len(parts) - 1
		if last >= 0 && verdicts[last] == verdict {
			parts[last] = append(parts[last], step[1:]...)
			continue
		}
		verdicts, parts = append(verdicts, verdict), append(parts, step)
	}
	return verdicts, parts
}

// steps cuts a path into stretches of about piecePx, each starting where the one before ends.
func steps(path ink.Path) []ink.Path {
	if len(path) < 2 {
		return nil
	}
	var out []ink.Path
	step, length := ink.Path{path[0]}, 0.0
	for i := 1; i < len(path); i++ {
		from := step[len(step)-1]
		for {
			d := ink.Path{from, path[i]}.Length()
			if length+d < piecePx {
				length += d
				step = append(step, path[i])
				break
			}
			from = ink.Path{from, path[i]}.At((piecePx - length) / d)
			out = append(out, append(step, from))
			step, length = ink.Path{from}, 0
		}
	}
	switch {
	case len(step) < 2:
	case len(out) > 0 && length < piecePx/2:
		out[len(out)-1] = append(out[len(out)-1], step[1:]...)
	default:
		out = append(out, step)
	}
	return out
}

// worst is the worst verdict on what a stretch of a seam's path shows.
func worst(v view, s seamsight.Seam, step ink.Path) (worst seamsight.Verdict) {
	var alongMM []float64
	for _, at := range []ink.Point{step[0], step.At(0.5), step[len(step)-1]} { // an end may lie just out of sight
		if p, ok := v.land(at); ok {
			if s.Axis == "x" {
				alongMM = append(alongMM, p.YMM)
			} else {
				alongMM = append(alongMM, p.XMM)
			}
		}
	}
	if len(alongMM) == 0 {
		return seamsight.OutOfSight
	}
	fromMM, toMM := slices.Min(alongMM), slices.Max(alongMM)
	first, _ := slices.BinarySearchFunc(s.Samples, fromMM,
		func(sample seamsight.Sample, mm float64) int { return cmp.Compare(sample.ToMM, mm) })
	for _, sample := range s.Samples[first:] {
		if sample.FromMM > toMM {
			break
		}
		worst = max(worst, v.judge(sample))
	}
	return worst
}
