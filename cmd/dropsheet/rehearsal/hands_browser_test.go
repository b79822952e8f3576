//go:build browser

package rehearsal

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// focus puts the focus on a slider.
func (p *tab) focus(name string) {
	p.Helper()
	require.True(p, tell[bool](p, fmt.Sprintf(
		`(s => { s.focus(); return document.activeElement === s })(document.querySelector(%q))`, slider(name))))
}

// makeLine is the command line that does the same as the page, once it is that of what was asked last.
func (p *tab) makeLine() string {
	p.Helper()
	p.rested()
	return tell[string](p, `document.getElementById("make").click(), (l => {
		document.getElementById("making").close(); return l })(document.getElementById("make-line").textContent)`)
}

// middle is the middle of what a selector finds, in the window.
func (p *tab) middle(selector string) (x, y float64) {
	p.Helper()
	at := tell[[]float64](p, fmt.Sprintf(`(b => [b.left + b.width / 2, b.top + b.height / 2])(
		document.querySelector(%q).getBoundingClientRect())`, selector))
	return at[0], at[1]
}

func slider(name string) string { return fmt.Sprintf(`[role=slider][aria-label="%s"]`, name) }

// Keys move every value: arrows finely, with Shift ten times as far, Page keys coarsely, 0 back to where it was; Enter
// lets it be typed, in the units of the command line and with its errors.
func TestKeys(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	shift := chromedp.KeyModifiers(chromedp.ModifierShift)
	p.focus("drop")
	for _, c := range []struct {
		key     string
		options []chromedp.KeyOption
		want    float64
	}{
		{kb.ArrowRight, nil, 5.05}, {kb.ArrowUp, nil, 5.1}, {kb.ArrowLeft, nil, 5.05},
		{kb.ArrowRight, []chromedp.KeyOption{shift}, 5.55}, {kb.PageUp, nil, 6.05}, {kb.PageDown, nil, 5.55},
	} {
		p.do(chromedp.KeyEvent(c.key, c.options...))
		p.at("drop", c.want, 1e-6)
	}
	p.do(chromedp.KeyEvent("0"))
	p.at("drop", 5, 0)
	p.do(chromedp.KeyEvent(kb.Enter), chromedp.KeyEvent("4.6mm"), chromedp.KeyEvent(kb.Enter))
	p.at("drop", 4.6, 0)
	require.Contains(t, p.makeLine(), "--drop 4.6mm")
	p.focus("drop")
	p.do(chromedp.KeyEvent(kb.Enter), chromedp.KeyEvent("4.6"), chromedp.KeyEvent(kb.Enter))
	p.until(`document.getElementById("fault").textContent.includes('--drop: "4.6" has no unit')`)
	p.do(chromedp.KeyEvent("0"))
	p.until(`document.getElementById("fault").textContent === ""`)

	// A handle of two values: arrows go its way, and from one to the other.
	p.focus("drop at, right")
	p.do(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowDown), chromedp.KeyEvent(kb.ArrowDown))
	p.at("drop at, right", 0.05, 1e-9)
	p.at("drop at, down", 0.1, 1e-9)
	require.Equal(t, "drop at, down", tell[string](p, `document.activeElement.ariaLabel`))

	// A stop of the ladder, a seam, a take by K.
	p.focus("aperture")
	p.do(chromedp.KeyEvent(kb.PageDown))
	p.at("aperture", 22/1.41421, 0.05)
	p.focus("seam C2")
	before := p.slider("seam C2")
	p.do(chromedp.KeyEvent(kb.ArrowLeft, shift))
	p.at("seam C2", before-5, 0.06)
	require.Contains(t, p.makeLine(), "--seam-at C2=")
	p.focus("seam C2")
	p.do(chromedp.KeyEvent(kb.Delete), chromedp.KeyEvent("k"))
	p.until(`document.querySelectorAll(".take").length === 1`)
	require.NotContains(t, p.makeLine(), "--seam-at")
}

// However late answers come, keys go on from what was said last; the command line is never that of other words; and a
// take is of its own words, frame and figures too.
func TestLateAnswers(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	was, before := p.slider("seam C2"), tell[string](p, `document.getElementById("picture").toDataURL()`)
	p.do(chromedp.Evaluate[chromedp.Void](`{
		const at = fetch;
		let late = new Promise(answered => { window.answer = answered; });
		window.fetch = async (...asked) => { await late; return at(...asked); };
	}`))
	p.focus("drop")
	p.do(chromedp.KeyEvent(kb.PageUp))
	p.focus("seam C2")
	p.do(chromedp.KeyEvent(kb.ArrowLeft), chromedp.KeyEvent(kb.ArrowLeft), chromedp.KeyEvent("k"))
	p.until(fmt.Sprintf(`Math.abs(%s - %g) < 0.11 && document.querySelector(".take")`, stands("seam C2"), was-1))
	line := `(document.getElementById("make").click(), document.getElementById("make-line").textContent)`
	require.Equal(t, "…", tell[string](p, line))
	require.Equal(t, "true", tell[string](p, `document.getElementById("see").ariaBusy`))
	p.do(chromedp.Evaluate[chromedp.Void](`answer()`))
	p.finest()
	shown := tell[string](p, `document.getElementById("make-line").textContent`)
	require.Contains(t, shown, "--drop 5.5mm")
	require.Contains(t, shown, fmt.Sprintf("--seam-at C2=%gmm", p.slider("seam C2")))
	p.at("seam C2", was-1, 0.11)
	p.click("#making-close")
	after := tell[string](p, `document.getElementById("picture").toDataURL()`)
	require.NotEqual(t, before, after)
	require.Equal(t, after, tell[string](p, `document.querySelector(".take .thumb canvas").toDataURL()`))
}

// mouse drags what a selector finds.
func (p *tab) mouse(selector string, dx, dy float64) {
	p.Helper()
	x, y := p.middle(selector)
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, x, y, chromedp.ButtonLeft))
	const steps = 5
	for i := range steps {
		part := float64(i+1) / steps
		p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x+part*dx, y+part*dy, chromedp.ButtonLeft))
	}
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, x+dx, y+dy, chromedp.ButtonLeft))
}

// The mouse drags every handle; what is dragged goes where the hand goes.
func TestMouse(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	drag := func(name string, dx, dy float64) {
		t.Helper()
		p.moved(name, func() { p.mouse(slider(name), dx, dy) })
	}
	x, y := p.middle(slider("drop at, down"))
	drag("drop at, right", -30, -20)
	toX, toY := p.middle(slider("drop at, down"))
	require.InDelta(t, x-30, toX, 2)
	require.InDelta(t, y-20, toY, 4, "it may have stood a little inside the frame's edge")
	require.Less(t, p.slider("drop at, right"), 0.0)

	x, y = p.middle(slider("drop"))
	drag("drop", 40, 0)
	toX, toY = p.middle(slider("drop"))
	require.InDelta(t, x+40, toX, 2)
	require.InDelta(t, y, toY, 2)
	require.Greater(t, p.slider("drop"), 5.3)

	for _, c := range []struct {
		name        string
		dx, dy      float64
		grows       bool
		word, other string
	}{
		{"frame width", 30, 0, true, "--frame-width", ""},
		{"centre, right", 20, 0, false, "--centre", ""},
		{"fill", 15, -15, false, "--fill", ""},
		{"turn", 60, 10, true, "--turn", ""},
		{"camera distance", -20, 0, true, "--camera-distance", ""},
		{"distance", 15, 0, true, "--distance", ""},
		{"look", 40, 0, true, "--look", ""},
		{"aperture", 60, 0, true, "--aperture", ""},
		{"lamp 2, down", 10, -30, false, "--lamp", ""},
	} {
		was := p.slider(c.name)
		drag(c.name, c.dx, c.dy)
		if c.grows {
			require.Greater(t, p.slider(c.name), was, c.name)
		} else {
			require.Less(t, p.slider(c.name), was, c.name)
		}
		require.Contains(t, p.makeLine(), c.word)
	}
	require.Empty(t, p.fault())
	p.screenshot("dragged")

	p.do(chromedp.Navigate(p.address)) // as it began, where that seam has room
	p.finest()
	was := p.slider("seam C2")
	drag("seam C2", -2, 0)
	require.Less(t, p.slider("seam C2"), was)
	require.Contains(t, p.makeLine(), "--seam-at C2=")
}

// The drop's own handle on the bench moves it between camera and board: both distances by their names, and their sum
// stays.
func TestDropOnTheBench(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	camera, board := p.slider("camera distance"), p.slider("distance")
	p.focus("camera distance, the drop moved")
	p.do(chromedp.KeyEvent(kb.ArrowRight))
	both := func(cameraMM, boardMM float64) {
		t.Helper()
		for name, want := range map[string]float64{"camera distance": cameraMM, "distance": boardMM} {
			p.at(name, want, 0.06)
			p.at(name+", the drop moved", want, 0.06)
		}
		p.finest()
	}
	both(camera+1, board-1)
	p.focus("distance, the drop moved")
	p.do(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.PageUp))
	both(camera+2-50, board-2+50)
	require.Contains(t, p.makeLine(), fmt.Sprintf("--distance %gmm", board+48))
	typed := func(word string) {
		t.Helper()
		p.focus("camera distance, the drop moved")
		p.do(chromedp.KeyEvent(kb.Enter), chromedp.KeyEvent(word), chromedp.KeyEvent(kb.Enter))
	}
	typed("31")
	p.until(`document.getElementById("fault").textContent.includes('--camera-distance: "31" has no unit')`)
	typed("1ft")
	both(304.8, camera+board-304.8)
}

// A finger does the same; what it touches is 44 pixels wide and high at least.
func TestTouch(t *testing.T) {
	p := open(t, harbourFile(t), 390, 844, chromedp.EmulateTouch)
	for _, size := range tell[[][]float64](p, `[...document.querySelectorAll(".handle")].map(
		h => [h.offsetWidth, h.offsetHeight])`) {
		require.GreaterOrEqual(t, size[0], 44.0)
		require.GreaterOrEqual(t, size[1], 44.0)
	}
	for _, height := range tell[[]float64](p, `[...document.querySelectorAll("button:not(.sheet), .button")].filter(
		b => b.offsetHeight && !b.closest(".verdict, .take")).map(b => b.offsetHeight)`) {
		require.GreaterOrEqual(t, height, 44.0)
	}
	x, y := p.middle(slider("drop"))
	p.moved("drop", func() { p.dragged(x, y, 20, 0) })
	require.Greater(t, p.slider("drop"), 5.2)
	require.Zero(t, tell[float64](p, `scrollY`), "the page does not scroll under the finger")
}

// Every value has a slider by the name of its word, with its value in words; everything can be reached by Tab.
func TestReachable(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	p.click("#keep")
	p.until(`document.querySelector(".take")`)
	tree, err := chromedp.Call(p.ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	require.NoError(t, err)
	sliders, buttons := map[string]string{}, map[string]bool{}
	text := func(v *accessibility.Value) (s string) {
		if v != nil {
			_ = json.Unmarshal(v.Value, &s) // what is no text is none
		}
		return s
	}
	for _, n := range tree.Nodes {
		if n.Ignored {
			continue
		}
		switch name := text(n.Name); text(n.Role) {
		case "slider":
			sliders[name] = text(n.Value)
		case "button":
			require.NotEmpty(t, name)
			buttons[name] = true
		}
	}
	for _, name := range []string{"drop", "drop at, right", "drop at, down", "frame width", "centre, right",
		"centre, down",
		"turn", "fill", "look", "aperture", "camera distance", "distance", "lamp 1, right", "lamp 1, down",
		"lamp 1, toward the camera", "lamp 2, right", "seam C1", "seam R2"} {
		require.Contains(t, sliders, name)
	}
	for _, name := range []string{"Sheet R2C3: how to print it again", "Red lamp", "Add a lamp", "Make the job…",
		"Take 1: hold to compare"} {
		require.True(t, buttons[name], "%s of %v", name, buttons)
	}
	require.Equal(t, "5 millimetres", tell[string](p, `document.querySelector('[aria-label="drop"]').ariaValueText`))

	reached := tell[int](p, `(document.activeElement.blur(), 0)`)
	all := tell[int](p, `[...document.querySelectorAll("button, input, [tabindex='0']")].filter(
		e => e.checkVisibility() && !e.disabled).length`)
	seen := map[string]bool{}
	for range all + 5 {
		p.do(chromedp.KeyEvent(kb.Tab))
		at := tell[string](p, `(e => e === document.body ? "" : e.ariaLabel || e.id || e.textContent)(
			document.activeElement)`)
		if at != "" && !seen[at] {
			seen[at] = true
			reached++
		}
	}
	require.GreaterOrEqual(t, reached, all-3, "some are called alike: %v", seen)
	for name := range map[string]bool{"drop": true, "seam R2": true, "distance": true, "keep": true, "make": true,
		"another": true, "lamp 2, right": true} {
		require.True(t, seen[name], "Tab comes to %s", name)
	}
}

// Text is lighter than its ground by 4.5 to 1 at least (WCAG 2.2, 1.4.3), in both lights.
func TestContrast(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	p.click("#keep")
	p.click("#all")
	p.until(`document.querySelector(".take") && document.getElementById("setup").open`)
	for _, light := range []string{"amber", "red"} {
		if light == "red" {
			p.click("#red")
		}
		p.until(fmt.Sprintf(`document.documentElement.dataset.lamp === %q`, light))
		for _, c := range tell[[]struct {
			Text  string
			Ratio float64
		}](p, contrasts) {
			require.GreaterOrEqual(t, c.Ratio, 4.5, "%s: %s", light, c.Text)
		}
	}
	p.screenshot("setup-red")
}

// contrasts is the contrast of every piece of text with the ground that is set behind it, by WCAG 2.2's formula for
// relative luminance. Names on pictures have a shadow in place of a ground and are left out.
const contrasts = `(() => {
	const canvas = document.createElement("canvas").getContext("2d", {willReadFrequently: true});
	const rgba = colour => {
		canvas.clearRect(0, 0, 1, 1);
		canvas.fillStyle = colour;
		canvas.fillRect(0, 0, 1, 1);
		return canvas.getImageData(0, 0, 1, 1).data;
	};
	const linear = v => v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4;
	const light = ([r, g, b]) => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
	const ground = e => {
		for (; e; e = e.parentElement) {
			const c = rgba(getComputedStyle(e).backgroundColor);
			if (c[3] > 190) return c;
		}
		return [0, 0, 0];
	};
	const all = [];
	for (const e of document.querySelectorAll("body *")) {
		const text = [...e.childNodes].filter(n => n.nodeType === 3).map(n => n.textContent.trim()).join(" ").trim();
		if (!text && e.tagName !== "INPUT" || !e.checkVisibility() || e.closest(".sheet")) continue;
		const s = getComputedStyle(e), a = light(rgba(e instanceof SVGElement ? s.fill : s.color)), b = light(ground(e));
		all.push({Text: e.tagName + " " + (text || e.id), Ratio: (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)});
	}
	return all;
})()`

// Lamps come and go; a job is made with progress and shown, and a folder that is there is not replaced unasked; takes
// are saved, and hang there again when the page is opened anew.
func TestLampsTakesAndJob(t *testing.T) {
	artwork := harbourFile(t)
	p := open(t, artwork, 1280, 800)
	p.click("#more-light")
	p.until(`document.querySelector('[aria-label="lamp 3, right"]') !== null`)
	p.click("#keep")
	p.click("#less-light")
	p.until(`document.querySelector('[aria-label="lamp 3, right"]') === null`)
	p.click("#keep")
	p.until(`document.querySelectorAll(".take").length === 2`)
	require.Contains(t, tell[string](p, `document.querySelector(".take small").textContent`), "lamp: 3 in place of 2")
	p.rested()

	// Held, a take is wiped over the frame; let go, the frame is what it was.
	sum := `document.getElementById("picture").toDataURL()`
	before := tell[string](p, sum)
	x, y := p.middle(".take .thumb")
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, x, y, chromedp.ButtonLeft))
	p.until(sum + ` !== ` + "`" + before + "`")
	p.screenshot("wipe")
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, x, y, chromedp.ButtonLeft))
	p.until(sum + ` === ` + "`" + before + "`")

	p.click("#save")
	p.until(`document.getElementById("saved").textContent === "saved in harbour-takes.json"`)
	p.do(chromedp.Navigate(p.address))
	p.until(`document.querySelectorAll(".take").length === 2`)
	p.finest()
	p.until(`[...document.querySelectorAll(".take canvas")].every(c => c.width >= 480)`)
	require.Empty(t, p.fault(), "pictures of takes come when nothing else is asked")
	// One that was read is compared at once, and by a frame as fine as the one that shows.
	before = tell[string](p, sum)
	x, y = p.middle(".take .thumb")
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, x, y, chromedp.ButtonLeft))
	p.until(sum + ` !== ` + "`" + before + "`")
	p.until(`document.querySelector(".take canvas").width === document.getElementById("picture").width`)
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, x, y, chromedp.ButtonLeft))
	p.until(sum + ` === ` + "`" + before + "`")

	p.click("#make")
	p.click("#making-go")
	p.until(`document.querySelectorAll("#making-shows > img").length === 3`)
	p.until(`document.querySelectorAll("#making-shows .pages[aria-label='The sheets'] img").length === 15`)
	p.until(`[...document.querySelectorAll("#making-shows img")].slice(0, 6).every(i => i.naturalWidth > 100)`)
	p.screenshot("made")
	p.click("#making-shows [aria-label='Page 2 of guide.pdf, large']")
	large := `(i => i.complete && i.naturalHeight === 1600 && i.alt === "page %d of guide.pdf")(
		document.getElementById("leaf-picture"))`
	p.until(fmt.Sprintf(large, 2))
	p.screenshot("leaf")
	p.do(chromedp.KeyEvent(kb.ArrowRight))
	p.until(fmt.Sprintf(large, 3))
	p.click("#leaf-close")
	require.FileExists(t, filepath.Join(filepath.Dir(artwork), "harbour-backdrop", "sheets.pdf"))
	p.click("#making-go")
	p.until(`!document.getElementById("making-fresh").hidden`)
	require.Equal(t, "Make harbour-backdrop-2", tell[string](p, `document.getElementById("making-fresh").textContent`))
	p.screenshot("there")
	left, err := os.ReadDir(filepath.Dir(artwork))
	require.NoError(t, err)
	require.Len(t, left, 3)
}
