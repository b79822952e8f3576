package rehearsal

import (
	"fmt"
	"math"
	"net/http"

	"dropsheet/layout"
)

// circle is a place of the board that was drawn by hand.
type circle struct {
	Words    []Word  `json:"words"`
	XMM      float64 `json:"x_mm"`
	YMM      float64 `json:"y_mm"`
	RadiusMM float64 `json:"radius_mm"`
}

// place answers with the word for --avoid that keeps seams out of a circle of the board.
func (s *server) place(w http.ResponseWriter, r *http.Request) {
	var c circle
	if !receive(w, r, &c) {
		return
	}
	set, err := s.bench.set(c.Words)
	if err != nil {
		answerJSON(w, newErrorRecord(err, c.Words))
		return
	}
	answerJSON(w, struct {
		head
		Avoid string `json:"avoid"`
	}{head{Kind: "place"}, avoid(set.plans[0], c)})
}

// avoid is the circle in the picture's own coordinates, as --avoid takes it, within the picture.
func avoid(p layout.Plan, c circle) string {
	at := p.Hang().At(c.XMM, c.YMM)
	// A millimetre of board, in widths of the picture: by how the picture's area changes there, for a bent one bends a
	// circle.
	perMM := math.Sqrt(math.Abs(at.UX*at.VY-at.UY*at.VX) * p.Picture.FlatHeightMM / p.Picture.FlatWidthMM)
	within := func(v, least float64) float64 { return max(least, min(v, 1)) }
	return fmt.Sprintf("%.3f,%.3f,%.3f", within(at.U, 0), within(at.V, 0), within(c.RadiusMM*perMM, 0.005))
}
