package gauge

import (
	"errors"
	"fmt"
	"io"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Write makes the gauge page for a paper, as a PDF file.
func Write(w io.Writer, paper layout.Paper) error {
	d := pdf.New("Printer gauge for " + paper.Name)
	d.AddPage(paper.WidthMM, paper.HeightMM)
	p := &page{geometry: newGeometry(paper)}
	p.compose()
	p.draw(d)
	return d.Stream(w, func(pdf.PictureID) (pdf.Picture, error) {
		return pdf.Picture{}, errors.New("the gauge page has no pictures") // none is placed
	})
}

// compose puts everything on the page.
func (p *page) compose() {
	p.frame()
	p.ruleAcross()
	p.ruleFeed()
	p.explain()
}

// explain fills the middle of the page, from the top: what to do, then greys and lines of known width.
// Whatever a small paper has no room for is left out; the command says it too.
func (p *page) explain() {
	if p.middle.WidthMM < leastMiddleMM {
		return
	}
	p.y = p.middle.YMM
	for _, part := range []func(*page){(*page).title, (*page).steps, (*page).form, (*page).command, (*page).wedge,
		(*page).lines, (*page).endGreys} {
		trial := &page{geometry: p.geometry, y: p.y}
		part(trial)
		if trial.y <= p.middle.BottomMM() {
			p.strokes, p.fills, p.words = append(p.strokes, trial.strokes...), append(p.fills, trial.fills...),
				append(p.words, trial.words...)
			p.y = trial.y + p.gapMM
		}
	}
}

// size writes the paper's size for people.
func size(widthMM, heightMM float64) string { return fmt.Sprintf("%.4g x %.4g mm", widthMM, heightMM) }
