package ink

import "math"

// dashes cuts a path into the pieces that carry ink.
func (l Line) dashes(p Path) []Path {
	period := 0.0
	for _, px := range l.DashPx {
		period += px
	}
	length := p.Length()
	if len(p) == 0 || !(length < math.MaxFloat64) { // a point that is no number has no place on the picture
		return nil
	}
	if period <= 0 {
		return []Path{p}
	}
	stretch := length / period
	stretch /= max(1, math.Round(stretch))

	var out []Path
	piece, inked, left := Path{p[0]}, true, l.DashPx[0]*stretch
	next := 1 // the length that follows, in DashPx
	for i := 1; i < len(p); i++ {
		from := p[i-1]
		for {
			d := apart(from, p[i])
			if d < left {
				left -= d
				piece = append(piece, p[i])
				break
			}
			from = between(from, p[i], left/d)
			if dash := append(piece, from).thinned(); inked && dash != nil {
				out = append(out, dash)
			}
			piece, inked, left = Path{from}, !inked, l.DashPx[next]*stretch
			next = (next + 1) % len(l.DashPx)
		}
	}
	if rest := piece.thinned(); inked && rest != nil {
		out = append(out, rest)
	}
	return out
}
