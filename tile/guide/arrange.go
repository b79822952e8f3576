package guide

import (
	"cmp"
	"slices"

	"dropsheet/tile/pdf"
)

// placement is how a section is set.
type placement struct {
	follows bool    // behind the one before, on its page
	spacing float64 // share of the usual gaps between blocks
}

// arrangement is how all sections are set, and the pages that follow from it.
type arrangement struct {
	cover      float64 // spacing of the overview
	placements []placement
	starts     []int     // the page on which each section starts, from 1
	pages      int       // in all
	fills      []float64 // how much of each page is filled, as a share
	torn       int       // sections that go over to a second page and could do without
	stubs      int       // sections with hardly anything under their title on its page
}

// zooms are how much smaller than usual a guide may be drawn, where that spares pages that are half empty and sections
// that are torn: body type of ten points comes to 8.7 at least.
var zooms = []float64{1, 0.97, 0.95, 0.93, 0.91, 0.9, 0.89, 0.88, 0.87}

// leastScale is how small a page's scale may come by that: on small paper type is small already.
const leastScale = 0.86

// laidOut is a book whose arrangement is the best of those that its sizes give.
func laidOut(j Job, found found) *book {
	var best *book
	for _, zoom := range zooms {
		b := newBook(pdf.Undrawn(), j, found, zoom)
		if best != nil && b.geo.scale < leastScale {
			break
		}
		b.arrangement = arrange(j, found, zoom)
		if best == nil || b.badness() < best.badness()-1e-9 {
			best = b
		}
		if best.badness() == float64(best.pages) && !(j.uncut() && best.pages > j.oneSheetPages()) {
			break // nothing speaks against it
		}
	}
	best.Document = j.document()
	return best
}

// badness is what speaks against an arrangement, in pages: their number, what is torn, titles that stand alone, and
// what is less than half full, of the last page less than a quarter.
func (a arrangement) badness() float64 {
	bad := float64(a.pages) + tears*float64(a.torn) + head*float64(a.stubs)
	last := len(a.fills) - 1
	for _, fill := range a.fills[:last] {
		bad += emptier(fill)
	}
	return bad + emptier(2*a.fills[last])
}

// What speaks against a section that is torn and could do without, and against a title with less than a share of a page
// under it before the section goes over to the next, in pages.
const (
	tears     = 1.5
	head      = 2.0
	headShare = 0.25
)

// emptier is what speaks against a page that is left filled to so little, in pages.
func emptier(fill float64) float64 {
	const half, weight = 0.5, 4.0
	return weight * max(0, half-fill)
}

// How sections share pages.
const (
	betweenMM    = 10.0 // from one section to the next on a page
	closeSpacing = 0.5  // share of the usual gaps, where that serves
	couldBeOne   = 1.3  // of a page: a section that high can be brought onto one
	tightSpacing = 0.35 // where something then fits on a page
	tightDrawing = 0.8  // share of the usual height of drawings that can do with less, at that spacing
)

// mostKept is how many ways to set what came before are kept while the next section finds its place.
const mostKept = 12

// partial is how the first sections are set.
type partial struct {
	arrangement
	yMM  float64 // where the last of them ends
	cost float64 // what speaks against them, in pages: those that are used up, and more
}

// arrange finds the sections the places that leave the least of the pages empty without parting what belongs
// together. It goes through them without drawing them.
func arrange(j Job, found found, zoom float64) arrangement {
	b := newBook(pdf.Undrawn(), j, found, zoom)
	kept := []partial{b.withCover()}
	for i, s := range b.sections {
		var next []partial
		var fresh []attempt // on pages of its own, wherever the one before ends
		for _, spacing := range []float64{1, closeSpacing} {
			fresh = append(fresh, b.attempt(i, s, placement{false, spacing}, 0))
		}
		if len(fresh[1].bottoms) > 1 {
			if tight := b.attempt(i, s, placement{false, tightSpacing}, 0); len(tight.bottoms) == 1 {
				fresh = append(fresh, tight)
			}
		}
		behind := map[float64][]attempt{} // by where the section before ends
		for _, before := range kept {
			tries := fresh
			if before.pages > 1 || j.uncut() { // an overview on one page stands alone, unless the guide is short
				if _, tried := behind[before.yMM]; !tried {
					behind[before.yMM] = b.behind(i, s, before.yMM, fresh[0])
				}
				tries = slices.Concat(fresh, behind[before.yMM])
			}
			for _, a := range tries {
				next = append(next, before.with(a, b.geo))
			}
		}
		slices.SortStableFunc(next, func(p, q partial) int { return cmp.Compare(p.cost, q.cost) })
		kept = next[:min(len(next), mostKept)]
	}
	return slices.MinFunc(kept, func(p, q partial) int { return cmp.Compare(p.badness(), q.badness()) }).arrangement
}

// withCover is the overview alone.
func (b *book) withCover() partial {
	p := partial{arrangement: arrangement{cover: 1}}
	p.pages, p.yMM = b.coverPages(1)
	for _, spacing := range []float64{closeSpacing, tightSpacing} {
		if p.pages == 1 {
			break
		}
		if pages, yMM := b.coverPages(spacing); pages < p.pages {
			p.cover, p.pages, p.yMM = spacing, pages, yMM
		}
	}
	for range p.pages - 1 {
		p.fills = append(p.fills, 1)
	}
	p.fills = append(p.fills, b.geo.fill(p.yMM))
	return p
}

// behind tries a section behind one that ends at y; fresh is how it is on pages of its own.
func (b *book) behind(i int, s section, y float64, fresh attempt) (tries []attempt) {
	at := y + betweenMM
	if at+headMM > b.geo.bottom { // not even its title has room
		return nil
	}
	if s.whole && (len(fresh.bottoms) > 1 || at+fresh.bottoms[0]-b.geo.top > b.geo.bottom) {
		return nil
	}
	for _, spacing := range []float64{1, closeSpacing} {
		tries = append(tries, b.attempt(i, s, placement{true, spacing}, y))
	}
	return tries
}

// with is a partial arrangement with one more section.
func (p partial) with(a attempt, g geometry) partial {
	p.fills, p.starts, p.placements = slices.Clone(p.fills), slices.Clone(p.starts), slices.Clone(p.placements)
	fill := p.fills[len(p.fills)-1]
	if a.follows {
		p.starts = append(p.starts, p.pages)
		p.pages += len(a.bottoms) - 1
		p.fills = p.fills[:len(p.fills)-1] // it goes on
		p.cost -= fill
	} else {
		p.starts = append(p.starts, p.pages+1)
		p.pages += len(a.bottoms)
		p.cost += 1 - fill + emptier(fill) // that page is used up
	}
	high := -g.fill(a.fromMM)
	for i, bottom := range a.bottoms {
		fill := g.fill(bottom)
		p.fills = append(p.fills, fill)
		high += fill
		if i < len(a.bottoms)-1 {
			p.cost += 1 + emptier(fill)
		} else {
			p.cost += fill
		}
	}
	if len(a.bottoms) > 1 && high < couldBeOne {
		p.torn++
		p.cost += tears
	}
	if len(a.bottoms) > 1 && g.fill(g.top+a.bottoms[0]-a.fromMM) < headShare {
		p.stubs++
		p.cost += head
	}
	p.cost += a.faults(g)
	p.placements, p.yMM = append(p.placements, a.placement), a.bottoms[len(a.bottoms)-1]
	return p
}

// coverPages is how many pages the overview takes, and where on the last it ends.
func (b *book) coverPages(spacing float64) (pages int, yMM float64) {
	before := b.page
	b.spacing = spacing
	b.newPage()
	b.overview()
	return b.page - before, b.lowest()
}

// attempt is a section set in one way.
type attempt struct {
	placement
	fromMM  float64   // where it starts on its first page
	bottoms []float64 // where it ends on each of its pages
}

// attempt draws a section behind one that ends at y.
func (b *book) attempt(i int, s section, p placement, y float64) attempt {
	b.newPage()
	b.bottoms = nil
	b.spacing = p.spacing
	a := attempt{placement: p, fromMM: b.geo.top}
	if p.follows {
		a.fromMM = y + betweenMM
		b.y, b.floor = a.fromMM, a.fromMM
	}
	b.title(i, s)
	s.draw(b)
	a.bottoms = append(b.bottoms, b.lowest())
	return a
}

// faults are what speaks against an attempt by itself, in pages.
func (a attempt) faults(g geometry) (cost float64) {
	const (
		closer    = 0.15 // airy pages read better
		tight     = 0.3
		parted    = 0.35 // a section that could stand on one page
		stub      = 0.5  // a few lines alone on a page
		stubShare = 0.2
	)
	high := g.bottom - g.top
	last := len(a.bottoms) - 1
	switch {
	case a.spacing <= tightSpacing:
		cost += tight
	case a.spacing < 1:
		cost += closer
	}
	if last == 0 {
		return cost
	}
	if a.follows {
		cost += parted
	}
	if (a.bottoms[last]-g.top)/high < stubShare {
		cost += stub
	}
	return cost
}
