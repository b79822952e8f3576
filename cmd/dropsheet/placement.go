package main

import (
	"fmt"
	"io"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// writePlacement says in a line where the seams went. sheets is how many there are.
func writePlacement(w io.Writer, p job.Placement, sheets int) error {
	if sheets == 1 {
		return nil
	}
	text := "cells as even as they can be"
	if p.Rule == layout.SeamsLeast {
		text = fmt.Sprintf("moved up to %.0f mm", p.MovedMM)
		if p.Cost != nil {
			text += fmt.Sprintf(", visibility cost %.2f of even cells", *p.Cost)
		}
	}
	_, err := fmt.Fprintf(w, "%-12s %s\n", "seams", text)
	return err
}
