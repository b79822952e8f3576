package main

import (
	"fmt"

	"dropsheet/tile/seamsight"
)

// seamCount is how many seams have which verdict. A seam counts once, where it shows most in the frame,
// beside the drop or in it.
type seamCount struct {
	Shows      int `json:"show"`
	Faint      int `json:"faint"`
	Hidden     int `json:"hidden"`
	OutOfSight int `json:"out_of_sight"`
}

func countSeams(seams []seamsight.Seam) (n seamCount) {
	for _, s := range seams {
		switch s.Verdict() {
		case seamsight.Shows:
			n.Shows++
		case seamsight.Faint:
			n.Faint++
		case seamsight.Hidden:
			n.Hidden++
		case seamsight.OutOfSight:
			n.OutOfSight++
		}
	}
	return n
}

func (n seamCount) all() int { return n.Shows + n.Faint + n.Hidden + n.OutOfSight }

// String says how many are seen.
func (n seamCount) String() string {
	return fmt.Sprintf("%d of %d show in the frame, %d more faintly", n.Shows, n.all(), n.Faint)
}
