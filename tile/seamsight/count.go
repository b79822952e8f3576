package seamsight

import "dropsheet/layout/report"

// Count counts seams by their verdict.
func Count(seams []Seam) (n report.SeamCount) {
	for _, s := range seams {
		switch s.Verdict() {
		case Shows:
			n.Shows++
		case Faint:
			n.Faint++
		case Hidden:
			n.Hidden++
		case OutOfSight:
			n.OutOfSight++
		}
	}
	return n
}
