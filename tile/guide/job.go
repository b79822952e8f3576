package guide

import (
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/sheet"
)

// paper is what the guide comes on.
func (j Job) paper() layout.Paper {
	if j.Paper == (layout.Paper{}) {
		return UsualPaper(j.Plan.Backdrop.Paper)
	}
	return j.Paper
}

// coded tells whether the labels of all sheets have room for the check code, and whether any has.
func (j Job) coded() (all, any bool) {
	all = true
	for _, s := range j.Plan.Sheets {
		shows := sheet.ShowsCode(j.Plan, s, sheet.Label{Job: j.Name, Code: j.CheckCode, Of: len(j.Plan.Sheets)})
		all, any = all && shows, any || shows
	}
	return all, any
}

// single tells whether one sheet is the whole print, without any seam.
func (j Job) single() bool { return len(j.Plan.Sheets) == 1 }

// body names what refracts: a falling drop, a solid ball, or a rod.
func (j Job) body() string { return report.Body(j.Plan.Drop) }

// rod tells whether it is a rod, upright or level.
func (j Job) rod() bool { return j.Plan.Drop.Body.Rod() }

// oblate tells whether it is a drop out of round.
func (j Job) oblate() bool { return j.Plan.Sight().Drop.Oblate() }

// surrounded tells whether the board goes on, printed, beyond the picture.
func (j Job) surrounded() bool {
	if !j.Plan.Picture.Plain() {
		return j.Plan.Backdrop.Surround != ""
	}
	return j.Plan.PictureOnBoard() != j.Plan.Backdrop.Board()
}

// eye tells whether somebody's eye looks in place of a camera.
func (j Job) eye() bool { return j.Plan.Camera.Eye }

// looker is the word for what looks.
func (j Job) looker() string { return report.Looker(j.Plan.Camera) }

// lens is the word for its part that counts.
func (j Job) lens() string { return report.Lens(j.Plan.Camera) }
