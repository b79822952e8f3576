package guide

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
}

// zooms are how much smaller than usual a guide may be drawn, where that spares pages that are half empty and sections
// that are torn: body type of ten points comes to 8.7 at least.
var zooms = []float64{1, 0.95, 0.9, 0.87}

// leastScale is how small a page's scale may come by that: on small paper type is small already.
const leastScale = 0.86

// laidOut is a book whose arrangement is the best of those that its sizes give.
func laidOut(j Job, found found) *book {
	var best *book
	for _, zoom := range zooms {
		b := newBook(j, found, zoom)
		if best != nil && b.geo.scale < leastScale {
			break
		}
		b.arrangement = arrange(j, found, zoom)
		if best == nil || b.badness() < best.badness()-1e-9 {
			best = b
		}
		if best.badness() == float64(best.pages) {
			break // nothing speaks against it
		}
	}
	return best
}

// badness is what speaks against an arrangement, in pages: their number, what is torn, and what is less than half full,
// but for the last.
func (a arrangement) badness() float64 {
	const half, emptier, tears = 0.5, 4.0, 1.5
	bad := float64(a.pages) + tears*float64(a.torn)
	for _, fill := range a.fills[:len(a.fills)-1] {
		bad += emptier * max(0, half-fill)
	}
	return bad
}

// How sections share pages.
const (
	betweenMM    = 10.0 // from one section to the next on a page
	closeSpacing = 0.5  // share of the usual gaps, where that serves
	couldBeOne   = 1.3  // of a page: a section that high can be brought onto one
	tightSpacing = 0.35 // for the overview alone, where it then fits on a page
)

// arrange finds each section in turn the place that leaves the least of the pages empty without parting what
// belongs together. It draws them on pages that are thrown away.
func arrange(j Job, found found, zoom float64) arrangement {
	b := newBook(j, found, zoom)
	fill := func(bottom float64) float64 { return (bottom - b.geo.top) / (b.geo.bottom - b.geo.top) }
	a := arrangement{cover: 1}
	a.pages = b.coverPages(1)
	for _, spacing := range []float64{closeSpacing, tightSpacing} {
		if a.pages == 1 {
			break
		}
		if pages := b.coverPages(spacing); pages < a.pages {
			a.cover, a.pages = spacing, pages
		}
	}
	y := b.lowest()
	for range a.pages - 1 {
		a.fills = append(a.fills, 1)
	}
	a.fills = append(a.fills, fill(y))
	for i, s := range b.sections {
		fresh := b.attempt(i, s, placement{false, 1}, y)
		best := fresh
		if i > 0 { // the first part starts behind the overview's last page
			for _, p := range []placement{{true, 1}, {true, closeSpacing}, {false, closeSpacing}} {
				at := y + betweenMM
				if p.follows && at+headMM > b.geo.bottom {
					continue // not even its title has room
				}
				if p.follows && s.whole && (len(fresh.bottoms) > 1 || at+fresh.bottoms[0] > b.geo.bottom) {
					continue
				}
				if try := b.attempt(i, s, p, y); try.cost(b.geo) < best.cost(b.geo) {
					best = try
				}
			}
		}
		if best.follows {
			a.starts = append(a.starts, a.pages)
			a.pages += len(best.bottoms) - 1
		} else {
			a.starts = append(a.starts, a.pages+1)
			a.pages += len(best.bottoms)
		}
		if best.follows {
			a.fills = a.fills[:len(a.fills)-1] // it goes on
		}
		high := -fill(best.fromMM)
		for _, bottom := range best.bottoms {
			a.fills = append(a.fills, fill(bottom))
			high += fill(bottom)
		}
		if len(best.bottoms) > 1 && high < couldBeOne {
			a.torn++
		}
		a.placements = append(a.placements, best.placement)
		y = best.bottoms[len(best.bottoms)-1]
	}
	return a
}

// coverPages is how many pages the overview takes.
func (b *book) coverPages(spacing float64) int {
	before := b.page
	b.spacing = spacing
	b.newPage()
	b.overview()
	return b.page - before
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

// cost is what speaks against an attempt, in pages.
func (a attempt) cost(g geometry) float64 {
	const (
		closer     = 0.15 // airy pages read better
		parted     = 0.35 // a section that could stand on one page
		stub       = 0.5  // a few lines alone on a page
		stubShare  = 0.2
		head       = 2.0 // a title with hardly anything under it
		headShare  = 0.25
		emptyShare = 0.35 // a page that is left emptier than this
	)
	high := g.bottom - g.top
	last := len(a.bottoms) - 1
	cost := float64(last) + (a.bottoms[last]-g.top)/high
	if !a.follows {
		cost++
	}
	if a.spacing < 1 {
		cost += closer
	}
	if last == 0 {
		return cost
	}
	if a.follows {
		cost += parted
	}
	if (a.bottoms[0]-a.fromMM)/high < headShare {
		cost += head
	}
	if (a.bottoms[last]-g.top)/high < stubShare {
		cost += stub
	}
	for _, bottom := range a.bottoms[:last] {
		if empty := (g.bottom - bottom) / high; empty > emptyShare {
			cost += empty - emptyShare
		}
	}
	return cost
}
