package rehearsal

import (
	"context"
	"sync"
)

// turn lets one at a time at the renderer: the latest. Whoever comes sends away the one before and waits until that has
// left, so that however many ask, one renders and memory stays what it was.
type turn struct {
	mutex sync.Mutex
	last  *holder
}

// holder has the turn, or waits for it.
type holder struct {
	leave context.CancelFunc
	gone  chan struct{}
}

// take waits for the turn. The context that it returns ends when the next one comes; done gives the turn back. ok is
// false when ctx ended first, or the next one has come already; there is nothing to give back then.
func (t *turn) take(ctx context.Context) (turned context.Context, done func(), ok bool) {
	turned, leave := context.WithCancel(ctx)
	mine := &holder{leave, make(chan struct{})}
	t.mutex.Lock()
	before := t.last
	t.last = mine
	t.mutex.Unlock()
	back := func() {
		leave()
		close(mine.gone)
	}
	if before == nil {
		return turned, back, true
	}
	before.leave()
	select {
	case <-before.gone:
		if turned.Err() == nil {
			return turned, back, true
		}
		back()
	case <-turned.Done():
		go func() { // those who come after wait for the one before all the same
			<-before.gone
			back()
		}()
	}
	return turned, nil, false
}
