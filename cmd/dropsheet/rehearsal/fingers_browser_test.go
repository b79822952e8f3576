//go:build browser

package rehearsal

import (
	"fmt"
	"math"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"dropsheet/tile/job"
)

// touch sends what a finger does.
func (p *tab) touch(kind input.DispatchTouchEventType, at ...*input.TouchPoint) {
	p.Helper()
	_, err := chromedp.Call(p.ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: at})
	require.NoError(p, err)
}

// dragged moves a finger from a place to another.
func (p *tab) dragged(x, y, dx, dy float64) {
	p.Helper()
	p.touch(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: x, Y: y})
	const steps = 4
	for i := range steps {
		part := float64(i+1) / steps
		p.touch(input.DispatchTouchEventTypeTouchMove, &input.TouchPoint{X: x + part*dx, Y: y + part*dy})
	}
	p.touch(input.DispatchTouchEventTypeTouchEnd)
}

// apart is how near the middles of two handles come that are found, by the further of across and down: over 44 pixels
// each has a square of its own.
func (p *tab) apart(selector string) float64 {
	p.Helper()
	at := tell[[][]float64](p, `[...document.querySelectorAll("`+selector+`")].map(h => h.getBoundingClientRect()).map(
		b => [b.left + b.width / 2, b.top + b.height / 2])`)
	require.Greater(p, len(at), 1)
	least := math.Inf(1)
	for i, a := range at {
		for _, b := range at[:i] {
			least = min(least, max(math.Abs(a[0]-b[0]), math.Abs(a[1]-b[1])))
		}
	}
	return least
}

// Seams of a board of many sheets lie closer than a finger is wide: their handles lie on rails beside the board, each
// with its own 44 pixels of the stage, and each moves its own seam. A touch on a sheet makes the board larger there.
func TestManySeamsByFinger(t *testing.T) {
	seams := `#board .handle:has([aria-label^='seam '])`
	open := func(name string, widthPx, heightPx int64) *tab {
		p := openWith(t, harbourFile(t), job.Asked{"distance": {"100cm"}, "max-sheets": {"120"}}, widthPx, heightPx,
			chromedp.EmulateTouch)
		require.Equal(t, 112, tell[int](p, `document.querySelectorAll(".sheet").length`))
		require.GreaterOrEqual(t, p.apart(seams), 44.0)
		require.True(t, tell[bool](p, `(s => [...document.querySelectorAll("`+seams+`")].map(
			h => h.getBoundingClientRect()).every(h => s.left <= h.left && h.right <= s.right && s.top <= h.top &&
			h.bottom <= s.bottom))(document.getElementById("board").getBoundingClientRect())`), "each is on the stage whole")
		p.screenshot(name)
		return p
	}
	open("many-sheets-tablet", 834, 1112)
	p := open("many-sheets", 390, 844)
	p.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("board").scrollIntoView({block: "center"})`))
	for _, name := range []string{"seam C5", "seam C6", "seam C12"} {
		was := p.slider(name)
		x, y := p.middle(slider(name))
		p.moved(name, func() { p.dragged(x, y, -2, -2) })
		require.Less(t, p.slider(name), was)
		require.InDelta(t, was, p.slider(name), 30, "2 pixels of a board 2.9 m wide")
		require.Contains(t, p.makeLine(), "--seam-at "+name[5:]+"=")
		require.GreaterOrEqual(t, p.apart(seams), 44.0)
		p.slides(name)
	}
	x, y := p.middle("[aria-label^='Sheet R4C7:']")
	p.touch(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: x, Y: y})
	p.touch(input.DispatchTouchEventTypeTouchEnd)
	p.until(`document.getElementById("larger").ariaPressed === "true"`)
	require.GreaterOrEqual(t, p.apart(seams+":not(.under)"), 44.0)
	require.Less(t, tell[int](p, `document.querySelectorAll(".handle.under").length`), 2)
	p.screenshot("many-sheets-larger")
}

// About a drop that is small in the frame handles stand far enough apart for a finger, and move what they are for.
func TestSmallDropByFinger(t *testing.T) {
	p := openWith(t, harbourFile(t), job.Asked{"distance": {"40cm"}}, 390, 844, chromedp.EmulateTouch)
	require.GreaterOrEqual(t, p.apart("#frame .handle"), 44.0)
	for i := range 2 {
		p.click("#more-light")
		p.until(fmt.Sprintf(`document.querySelector(%q)`, slider(fmt.Sprintf("lamp %d, right", i+1))))
	}
	p.finest()
	require.GreaterOrEqual(t, p.apart("#bench .handle"), 44.0, "two lamps are behind one another from the side")
	for _, name := range []string{"drop", "drop at, right", "turn", "fill", "centre, right"} {
		x, y := p.middle(slider(name))
		p.moved(name, func() { p.dragged(x, y, 12, 7) })
		require.Empty(t, p.fault())
	}
	p.screenshot("small-drop")
}

// A mouse points at less: on a wide screen one row of handles does for as many seams.
func TestManySeamsByMouse(t *testing.T) {
	p := openWith(t, harbourFile(t), job.Asked{"distance": {"100cm"}, "max-sheets": {"120"}}, 1280, 800)
	p.screenshot("many-sheets-wide")
	require.GreaterOrEqual(t, p.apart(`#board .handle:has([aria-label^='seam C'])`), 24.0)
	require.GreaterOrEqual(t, p.apart(`#board .handle:has([aria-label^='seam R'])`), 24.0)
	for _, name := range []string{"seam C8", "seam C9"} {
		was := p.slider(name)
		p.moved(name, func() { p.mouse(slider(name), -2, -2) })
		require.Less(t, p.slider(name), was)
		require.Contains(t, p.makeLine(), "--seam-at "+name[5:]+"=")
		p.slides(name)
	}
}

// slides lets a seam slide again that was put somewhere.
func (p *tab) slides(name string) {
	p.Helper()
	p.focus(name)
	p.do(chromedp.KeyEvent(kb.Delete))
	p.until(`!document.querySelector(".handle.put")`)
	p.finest()
	require.NotContains(p, p.makeLine(), "--seam-at")
}
