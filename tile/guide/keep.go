package guide

import "dropsheet/tile/pdf"

// tallTopic is the share of a page from which a topic may go over to the next: kept together it would leave
// too much of the page empty.
const tallTopic = 0.5

// together draws blocks that belong together: on one page, if one holds them.
func (b *book) together(draw func(*book)) { b.keep(draw, 1) }

// topic sets a heading and what it is about, together unless that is tall.
func (b *book) topic(heading string, draw func(*book)) {
	b.keep(func(b *book) {
		b.side(heading)
		draw(b)
	}, tallTopic)
}

// keep draws blocks on one page, if they take no more than a share of it.
func (b *book) keep(draw func(*book), share float64) {
	if !b.trying {
		if high, pages := b.takes(draw); pages == 1 && high <= share*(b.geo.bottom-b.geo.top) {
			b.y = b.lowest()
			b.need(high + b.gap(sideGapMM))
		}
	}
	draw(b)
}

// takes tells how high what draw draws is, and over how many pages it goes from the top of one. It is gone
// through without being drawn.
func (b *book) takes(draw func(*book)) (heightMM float64, pages int) {
	if b.trial == nil {
		b.trial = newBook(pdf.Undrawn(), b.job, b.found, b.zoom)
		b.trial.trying = true
	}
	t := b.trial
	t.spacing = b.spacing
	t.newPage()
	before := t.page
	draw(t)
	return t.lowest() - t.geo.top, t.page - before + 1
}

// lowest is where what is drawn on the page ends.
func (b *book) lowest() float64 { return max(b.y, b.floor) }

// drawingMM is the height of a drawing that can do with less, smaller where that saves a page.
func (b *book) drawingMM(mm float64) float64 {
	if b.spacing <= tightSpacing {
		return tightDrawing * mm
	}
	return mm
}

// gap is a gap between blocks, closer where that saves a page.
func (b *book) gap(mm float64) float64 { return mm * b.spacing }
