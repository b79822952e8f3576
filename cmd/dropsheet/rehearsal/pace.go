package rehearsal

import (
	"math"
	"runtime"
	"sync"
	"time"
)

// pace finds how large a draft may be: as large as is rendered in draftTime of processor time.
type pace struct {
	mutex   sync.Mutex
	seconds float64 // of processor time for a pixel, as the last drafts took; 0 before the first
}

// draftTime is what a draft may take of all processors together, so that it keeps up with the hand.
const draftTime = 60 * time.Millisecond

// Bounds of a draft's longer side, in pixels.
const (
	smallestDraftPx = 160
	firstDraftPx    = 320
	largestDraftPx  = 640
)

// sidePx is the longer side of the next draft, of a frame with these pixels. It goes in steps of 32, so that drafts do
// not flutter.
func (p *pace) sidePx(widthPx, heightPx int) int {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	if p.seconds == 0 {
		return firstDraftPx
	}
	pixels := draftTime.Seconds() / p.seconds
	shape := float64(max(widthPx, heightPx)) / float64(min(widthPx, heightPx))
	side := int(math.Sqrt(pixels*shape)) / 32 * 32
	return max(smallestDraftPx, min(side, largestDraftPx))
}

// took is told of each draft how many pixels it had and how long it took on all processors.
func (p *pace) took(pixels int, wall time.Duration) {
	const share = 0.3 // of the newest
	seconds := wall.Seconds() * float64(runtime.GOMAXPROCS(0)) / float64(max(1, pixels))
	p.mutex.Lock()
	defer p.mutex.Unlock()
	if p.seconds == 0 {
		p.seconds = seconds
	}
	p.seconds += share * (seconds - p.seconds)
}
