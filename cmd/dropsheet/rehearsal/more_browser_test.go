//go:build browser

package rehearsal

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
)

// A circle drawn on the board keeps seams out; by keys one comes to lie in the middle, and goes again.
func TestKeepsSeamsOut(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	p.click("#avoid")
	p.until(`document.getElementById("board").classList.contains("drawing")`)
	x, y := p.middle("#board")
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, x, y, chromedp.ButtonLeft),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x+20, y, chromedp.ButtonLeft),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, x+20, y, chromedp.ButtonLeft))
	p.until(`document.querySelectorAll(".kept-clear, [aria-label='avoid 1, radius']").length === 2`)
	p.finest()
	require.InDelta(t, 0.5, p.slider("avoid 1, right"), 0.02)
	require.Contains(t, p.makeLine(), "--avoid 0.")
	p.screenshot("avoid")
	p.focus("avoid 1, right")
	p.do(chromedp.KeyEvent(kb.Delete))
	p.until(`document.querySelectorAll(".kept-clear").length === 0`)
	require.NotContains(t, p.makeLine(), "--avoid")
	p.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("avoid").focus()`), chromedp.KeyEvent(kb.Enter))
	p.until(`document.querySelectorAll(".kept-clear").length === 1`)
}

// All set-up can be typed, and what is wrong is said beside the word that is to blame.
func TestTypedSetUp(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	p.click("#all")
	p.do(chromedp.SendKeys(chromedp.CSS("#word-liquid"), "glycerol\t"))
	p.until(`document.querySelector("#by-hand code").textContent.includes("glycerol")`)
	require.Contains(t, p.makeLine(), "--liquid glycerol")
	p.do(chromedp.SendKeys(chromedp.CSS("#word-fill"), "2\t"))
	p.until(`document.getElementById("word-fill-wrong").textContent.includes('"2" can\'t be taken')`)
	require.Equal(t, "true", tell[string](p, `document.getElementById("word-fill").ariaInvalid`))
	p.screenshot("wrong")
	p.click("#word-round")
	p.until(`document.getElementById("word-round").checked`)
	p.rested()
	p.until(`document.getElementById("word-fill-wrong").textContent !== ""`) // one thing at a time
	p.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("word-fill").select()`),
		chromedp.SendKeys(chromedp.CSS("#word-fill"), kb.Backspace+"\t"))
	p.until(`document.getElementById("fault").textContent === ""`)
	require.Contains(t, p.makeLine(), "--round")
	require.NotContains(t, p.makeLine(), "--fill")
}

// The passage plays, and stops; without the drop's speed the page says what is missing.
func TestPlays(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	p.click("#play")
	p.until(`document.getElementById("fault").textContent.includes("takes the drop's speed and the frame rate")`)
	p.click("#all")
	p.do(chromedp.SendKeys(chromedp.CSS("#word-fall"), "20cm\t"),
		chromedp.SendKeys(chromedp.CSS("#word-frame-rate"), "12500\t"))
	p.until(`document.querySelector("#by-hand code").textContent.includes("--frame-rate 12500")`)
	p.finest()
	p.click("#play")
	p.until(`document.getElementById("play").title.endsWith("of 40")`)
	picture := `document.getElementById("picture").toDataURL()`
	first := tell[string](p, picture)
	p.until(picture + ` !== ` + "`" + first + "`")
	p.screenshot("playing")
	p.click("#play")
	p.until(`document.getElementById("play").textContent === "Play"`)
}

// A click on a sheet says how to print it again; another picture takes the artwork's place.
func TestSheetAndPicture(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	p.click(".sheet:nth-of-type(8)")
	p.until(`document.getElementById("sheet").textContent !== ""`)
	require.Regexp(t, `page 8 of sheets.pdf.*dropsheet reprint .*harbour-backdrop R2C3$`,
		tell[string](p, `document.getElementById("sheet").textContent`))
	p.click("#keep")
	p.until(`document.querySelector(".take")`)
	other, _ := jobtest.WritePattern(t, 90, 90)
	p.do(chromedp.SetUploadFiles(chromedp.CSS("#another"), []string{other}))
	p.until(`document.getElementById("subject").textContent.includes("90 × 90")`)
	p.rested()
	require.Contains(t, tell[string](p, `document.getElementById("made-of").textContent`), "pattern-backdrop")
	require.Zero(t, tell[int](p, `document.querySelectorAll(".take").length`), "takes of the picture before")
}

// What is wrong at the beginning stays to be read until a word changes.
func TestBrokenTakes(t *testing.T) {
	artwork := harbourFile(t)
	takes := filepath.Join(filepath.Dir(artwork), "harbour-takes.json")
	require.NoError(t, os.WriteFile(takes, []byte("notes"), 0o600))
	p := open(t, artwork, 1280, 800)
	require.Contains(t, p.fault(), "no file of takes")
	p.focus("drop")
	p.do(chromedp.KeyEvent(kb.ArrowRight))
	p.until(`document.getElementById("fault").textContent === ""`)
}

// Places and lengths typed in any unit are where the server reads them, and move on from there.
func TestTypedUnits(t *testing.T) {
	p := open(t, harbourFile(t), 1280, 800)
	typed := func(name, word string) {
		t.Helper()
		p.focus(name)
		p.do(chromedp.KeyEvent(kb.Enter), chromedp.KeyEvent(word), chromedp.KeyEvent(kb.Enter))
	}
	at := func(name string, want float64) {
		t.Helper()
		p.at(name, want, 1e-3)
	}
	typed("lamp 1, right", "-60,0,80cm")
	at("lamp 1, right", -600)
	at("lamp 1, down", 0)
	at("lamp 1, toward the camera", 800)
	typed("lamp 2, right", "2',-1ft,24″")
	at("lamp 2, right", 609.6)
	at("lamp 2, down", -304.8)
	typed("distance", "1.5ft")
	at("distance", 457.2)
	typed("drop at, right", "500,-200um")
	at("drop at, right", 0.5)
	at("drop at, down", -0.2)
	p.rested()
	p.focus("lamp 1, right")
	p.do(chromedp.KeyEvent(kb.ArrowRight))
	at("lamp 1, right", -590)
	p.rested()
	require.Empty(t, p.fault())
	line := p.makeLine()
	require.Contains(t, line, "--lamp -590mm,0mm,800mm")
	require.NotContains(t, line, "NaN")
}
