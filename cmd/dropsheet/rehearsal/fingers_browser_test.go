//go:build browser

package rehearsal

import (
	"fmt"
	"math"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
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

// Seams of a board of many sheets lie closer than a finger is wide: a touch makes the board larger there, until each
// has its own 44 pixels, and the next one moves the seam.
func TestManySeamsByFinger(t *testing.T) {
	p := openWith(t, harbourFile(t), job.Asked{"distance": {"100cm"}, "max-sheets": {"120"}}, 390, 844,
		chromedp.EmulateTouch)
	require.Greater(t, tell[int](p, `document.querySelectorAll(".sheet").length`), 80)
	seams := `#board .handle:has([aria-label^='seam '])`
	require.Less(t, p.apart(seams), 44.0)
	p.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("board").scrollIntoView({block: "center"})`))
	was := p.slider("seam C5")
	x, y := p.middle(slider("seam C5"))
	p.dragged(x, y, 10, 0)
	p.until(`document.getElementById("larger").ariaPressed === "true"`)
	require.InDelta(t, was, p.slider("seam C5"), 1e-9, "it only came nearer")
	require.GreaterOrEqual(t, p.apart(seams), 44.0)
	x, y = p.middle(slider("seam C5"))
	require.True(t, tell[bool](p, `(b => x => b.left < x && x < b.right)(
		document.getElementById("board").getBoundingClientRect())(document.querySelector('`+slider("seam C5")+
		`').getBoundingClientRect().left + 22)`), "it is in sight")
	p.moved("seam C5", func() { p.dragged(x, y, -6, 0) })
	require.Less(t, p.slider("seam C5"), was)
	require.Contains(t, p.makeLine(), "--seam-at C5=")
	p.screenshot("many-sheets-larger")
	p.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("larger").click()`))
	require.Less(t, p.apart(seams), 44.0)
	p.screenshot("many-sheets")
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
