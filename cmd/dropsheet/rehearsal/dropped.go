package rehearsal

import (
	"os"

	"dropsheet/tile/artwork"
)

// lent is the folder of a picture that was dropped on the page. It stays as long as the picture lies on the bench or a
// job is made of it. The bench's lock is its own too.
type lent struct {
	folder string
	to     int // how many have it, of whom the bench is one
}

// put puts a picture on the bench that was dropped on the page, with the folder that it lies in.
func (b *bench) put(s Subject, whole *artwork.Picture, folder string) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.takeBack(b.dropped)
	b.subject, b.placed, b.dropped = s, placed{}, &lent{folder, 1}
	b.art = &onScreen{open: s.open, whole: whole}
}

// lend is what lies on the bench; its picture's file stays until it is given back.
func (b *bench) lend() (s Subject, back func()) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	dropped := b.dropped
	if dropped != nil {
		dropped.to++
	}
	return b.subject, func() {
		b.mutex.Lock()
		defer b.mutex.Unlock()
		b.takeBack(dropped)
	}
}

// clear takes away the picture that was dropped on the page, if one was.
func (b *bench) clear() {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.takeBack(b.dropped)
	b.dropped = nil
}

// takeBack takes a folder away that nobody has any more. The bench is locked.
func (b *bench) takeBack(l *lent) {
	if l == nil {
		return
	}
	if l.to--; l.to == 0 {
		_ = os.RemoveAll(l.folder)
	}
}
