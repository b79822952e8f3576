package jpeg

import "image"

// scan writes a file, which has one scan.
type scan struct {
	bits       bitStream
	components []*component
	step       int          // pixels across and down that share one of chroma: 1 or 2
	spare      [64]byte     // for blocks at the edges
	c          coefficients // of the block at hand
}

// newScan begins a file of 1 or 3 components.
func newScan(size image.Point, quality, components int, chroma image.YCbCrSubsampleRatio) *scan {
	s := &scan{components: make([]*component, components), step: stepOf(chroma)}
	tables := [2][64]uint8{quantisation(&annexK[0], quality), quantisation(&annexK[1], quality)}
	s.bits.out = header(size, tables[:min(components, 2)], components, s.step)
	for i := range s.components {
		s.components[i] = newComponent(min(i, 1), &tables[min(i, 1)])
	}
	return s
}

// block appends the block of component i whose first pixel is at (x, y) of its plane.
func (s *scan) block(i int, p *plane, x, y int) {
	rows, stride := p.block(x, y, &s.spare)
	s.c.transform(rows, stride)
	s.bits.block(&s.c, s.components[i])
}

// gray appends a whole picture of one component, block after block (A.2.2).
func (s *scan) gray(p *plane) {
	for y := 0; y < p.height; y += 8 {
		for x := 0; x < p.width; x += 8 {
			s.block(0, p, x, y)
		}
	}
}

// colour appends a picture or a band of one: one or four blocks of luma, then one of each chroma (A.2.3).
func (s *scan) colour(p *planes) {
	side := 8 * s.step
	for y := 0; y < p[0].height; y += side {
		for x := 0; x < p[0].width; x += side {
			s.block(0, &p[0], x, y)
			if s.step == 2 {
				s.block(0, &p[0], x+8, y)
				s.block(0, &p[0], x, y+8)
				s.block(0, &p[0], x+8, y+8)
			}
			s.block(1, &p[1], x/s.step, y/s.step)
			s.block(2, &p[2], x/s.step, y/s.step)
		}
	}
}

// rows appends a picture or a band of one; fill makes the planes of BlockPx rows, from row y on.
func (s *scan) rows(r image.Rectangle, fill func(p *planes, y int)) {
	part := newPlanes(r.Dx(), min(r.Dy(), BlockPx), s.step)
	for y := r.Min.Y; y < r.Max.Y; y += BlockPx {
		if r.Max.Y-y < part[0].height {
			part = newPlanes(r.Dx(), r.Max.Y-y, s.step)
		}
		fill(part, y)
		s.colour(part)
	}
}

// finish ends the file and returns it.
func (s *scan) finish() []byte {
	return append(s.bits.finish(), 0xff, endOfImage)
}
