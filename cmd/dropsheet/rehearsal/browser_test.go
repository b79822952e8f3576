//go:build browser

package rehearsal

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"dropsheet/tile/film/browsertest"
	"dropsheet/tile/job"
)

// Whatever an action leads to is waited for by its own state, however long it takes: at, moved, until, rested, finest.

// tab is a page in a Chromium that talks to this machine alone. At its end no error was on the console, and nothing
// was asked of anyone but the server.
type tab struct {
	*testing.T
	ctx     context.Context
	address string
	mutex   sync.Mutex
	wrong   []string
}

// onTheBench is what the page begins with.
var onTheBench = job.Asked{"distance": {"40cm"}, "frame-width": {"9mm"}, "pixels": {"1280x800"}, "aperture": {"f/22"},
	"lamp": {"-900mm,-700mm,600mm", "900mm,-700mm,600mm"}}

// open opens the page of an artwork on a screen of that size.
func open(t *testing.T, artwork string, widthPx, heightPx int64, options ...chromedp.EmulateViewportOption) *tab {
	t.Helper()
	return openWith(t, artwork, onTheBench, widthPx, heightPx, options...)
}

// openWith opens it with words to begin with.
func openWith(t *testing.T, artwork string, words job.Asked, widthPx, heightPx int64,
	options ...chromedp.EmulateViewportOption) *tab {
	t.Helper()
	address, stop := serve(t, artwork, words)
	t.Cleanup(stop)
	ctx := browsertest.Start(t)
	p := &tab{T: t, ctx: ctx, address: address}
	require.NoError(t, chromedp.Listen(ctx, p.watch))
	p.do(chromedp.EmulateViewport(widthPx, heightPx, options...), chromedp.Navigate(address))
	p.finest()
	t.Cleanup(func() {
		p.mutex.Lock()
		defer p.mutex.Unlock()
		require.Empty(t, p.wrong)
	})
	return p
}

// watch writes down what must not be.
func (p *tab) watch(event any) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		if url := e.Request.URL; !strings.HasPrefix(url, p.address) && !strings.HasPrefix(url, "blob:") &&
			!strings.HasPrefix(url, "about:") {
			p.wrong = append(p.wrong, "asked for "+url)
		}
	case *runtime.EventConsoleAPICalled:
		if e.Type == "error" || e.Type == "warning" || e.Type == "assert" {
			p.wrong = append(p.wrong, fmt.Sprintf("console: %s %v", e.Type, e.Args))
		}
	case *runtime.EventExceptionThrown:
		p.wrong = append(p.wrong, fmt.Sprintf("thrown: %s %v", e.ExceptionDetails.Text, e.ExceptionDetails.Exception))
	case *log.EventEntryAdded:
		if e.Entry.Level == "error" || e.Entry.Level == "warning" {
			p.wrong = append(p.wrong, "log: "+e.Entry.Text)
		}
	}
}

func (p *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	require.NoError(p, chromedp.Do(p.ctx, steps...))
}

// tell is what an expression comes to on the page.
func tell[T any](p *tab, expression string) T {
	p.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	require.NoError(p, err, expression)
	return v
}

// until waits until an expression is true, or is anything.
func (p *tab) until(expression string) {
	p.Helper()
	_, err := chromedp.Run(p.ctx, chromedp.Poll[bool]("Boolean("+expression+")",
		chromedp.WithPollingTimeout(browsertest.Patience)))
	if err != nil {
		p.mutex.Lock()
		defer p.mutex.Unlock()
		require.NoError(p, err, "%s; %v; it says %q", expression, p.wrong, p.fault())
	}
}

func (p *tab) fault() string {
	text, _ := chromedp.Run(p.ctx, chromedp.Evaluate[string](`document.getElementById("fault").textContent`))
	return text
}

// rested waits until what was asked is answered whole, or what is wrong with it is said.
func (p *tab) rested() {
	p.Helper()
	p.until(`document.getElementById("see").ariaBusy === "false"`)
}

// finest waits until what was asked is answered whole, with the frame as fine as it gets.
func (p *tab) finest() {
	p.Helper()
	p.rested()
	require.Equal(p, "fine", tell[string](p, `document.getElementById("frame").dataset.rung`), p.fault())
}

// stands is an expression for what a slider of that name stands at; NaN where there is none.
func stands(name string) string {
	return fmt.Sprintf(`(s => s ? Number(s.ariaValueNow) : NaN)(document.querySelector(%q))`, slider(name))
}

// slider is what a slider of that name stands at.
func (p *tab) slider(name string) float64 {
	p.Helper()
	return tell[float64](p, stands(name))
}

// at waits until a slider stands at a number, or so near to it.
func (p *tab) at(name string, want, within float64) {
	p.Helper()
	p.until(fmt.Sprintf(`Math.abs(%s - %g) <= %g`, stands(name), want, within))
}

// moved does what moves a slider, and waits until it has moved, no hand is on any, and the answer has come whole.
func (p *tab) moved(name string, by func()) {
	p.Helper()
	was := p.slider(name)
	by()
	p.until(fmt.Sprintf(`%s !== %g && !document.querySelector(".handle.held")`, stands(name), was))
	p.finest()
}

// click clicks on what a selector finds, once nothing on the page comes and moves it any more.
func (p *tab) click(selector string) {
	p.Helper()
	p.rested()
	p.do(chromedp.Click(chromedp.CSS(selector)))
}

// screenshot keeps a picture of the page for people to look at, in the folder that SCREENSHOTS names. For a page longer
// than its window the browser makes a longer window for a while, and the page is as it was once that has gone.
func (p *tab) screenshot(name string) {
	p.Helper()
	folder := os.Getenv("SCREENSHOTS")
	if folder == "" {
		return
	}
	size := tell[[]int](p, `[innerWidth, innerHeight]`)
	m, err := chromedp.Run(p.ctx, chromedp.FullScreenshot(100))
	require.NoError(p, err)
	require.NoError(p, os.WriteFile(filepath.Join(folder, name+".png"), m, 0o600))
	p.until(fmt.Sprintf(`innerWidth === %d && innerHeight === %d`, size[0], size[1]))
	tell[bool](p, `new Promise(told => requestAnimationFrame(() => requestAnimationFrame(() => told(true))))`) // of it
	p.rested()
}

var harbour = filepath.Join("..", "..", "..", "testdata", "harbour.jpg")

// harbourFile is a copy of the harbour in a folder of its own.
func harbourFile(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(harbour)
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "harbour.jpg")
	require.NoError(t, os.WriteFile(path, text, 0o600))
	return path
}

// On every screen the page opens, nothing sticks out to the side, and it can be looked at.
func TestScreens(t *testing.T) {
	for _, c := range []struct {
		name          string
		width, height int64
		touch         bool
	}{{"wide", 1280, 800, false}, {"tablet", 834, 1112, true}, {"telephone", 390, 844, true}} {
		t.Run(c.name, func(t *testing.T) {
			var options []chromedp.EmulateViewportOption
			if c.touch {
				options = append(options, chromedp.EmulateTouch)
			}
			p := open(t, harbourFile(t), c.width, c.height, options...)
			require.LessOrEqual(t, tell[int64](p, `document.documentElement.scrollWidth`), c.width)
			p.screenshot(c.name)
			p.click("#red")
			p.until(`document.documentElement.dataset.lamp === "red"`)
			p.screenshot(c.name + "-red")
		})
	}
}
