package report

import (
	"math"
	"strings"
)

// The bench is drawn in so many columns and at most so many lines; a letter is about twice as high as wide.
const (
	benchColumns   = 60
	benchMostLines = 21
	letterTall     = 2.0
)

// BenchView draws the bench from the side, to scale, in letters: the lens at the left, the drop, which is far smaller
// than a letter, and the print on its board at the right; rays run from the drop to the print's upper and lower edge.
func (r *Report) BenchView() []string {
	p := r.shot.Plan
	cameraMM, distanceMM, halfMM := p.Drop.CameraMM, p.Drop.DistanceMM, p.Backdrop.HeightMM/2
	const lens = "[]"
	wide := float64(benchColumns - len(lens) - 1)
	mmPerColumn := math.Max((cameraMM+distanceMM)/wide, 2*halfMM/(benchMostLines*letterTall))
	column := func(mm float64) int { return len(lens) + int(math.Round(mm/mmPerColumn)) }
	drop, board := column(cameraMM), column(cameraMM+distanceMM)
	half := int(math.Round(halfMM / mmPerColumn / letterTall))
	var lines []string
	for row := -half; row <= half; row++ {
		line := []rune(strings.Repeat(" ", board+1))
		if row == 0 {
			for x := len(lens); x < board; x++ {
				line[x] = '-'
			}
			copy(line, []rune(lens))
			line[drop] = 'o'
		} else {
			out := math.Abs(float64(row)) / float64(half) // along the ray to the print's edge
			line[drop+int(math.Round(out*float64(board-drop)))] = '.'
		}
		line[board] = '#'
		lines = append(lines, strings.TrimRight(string(line), " "))
	}
	under := []rune(strings.Repeat(" ", benchColumns))
	put := func(from int, words string) {
		from = max(0, min(from, benchColumns-len([]rune(words))))
		copy(under[from:], []rune(words))
	}
	put(0, r.lens())
	put((len(lens)+drop)/2-3, length("drop.camera_distance_mm", cameraMM).String())
	if drop-len(lens) > 2*len("300.0 mm") {
		put(drop-2, r.body)
	}
	put((drop+board)/2-3, length("drop.distance_mm", distanceMM).String())
	put(board-4, "board")
	return append(lines, strings.TrimRight(string(under), " "))
}
