//go:build browser

package film

import (
	"bytes"
	"context"
	"encoding/base64"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"dropsheet/tile/film/browsertest"
)

const page = `<!doctype html><meta charset="utf-8"><video id="v" src="film.webm" muted preload="auto"></video><script>
const v = document.getElementById("v");
const met = event => new Promise((done, failed) => {
	v.addEventListener(event, done, {once: true});
	v.addEventListener("error", () => failed(new Error(v.error.message)), {once: true});
});
async function opened() {
	if (v.error) throw new Error(v.error.message);
	if (v.readyState < 2) await met("loadeddata");
	return {Width: v.videoWidth, Height: v.videoHeight, Seconds: v.duration};
}

// A busy browser says "seeked" before it shows the frame: what it shows is told by its callback for frames.
const presented = (i, fps) => new Promise(done => {
	const look = (_, frame) => Math.round(frame.mediaTime * fps) === i ? done() : v.requestVideoFrameCallback(look);
	v.requestVideoFrameCallback(look);
});
async function frameAt(i, fps) {
	const there = met("seeked"), shown = presented(i, fps);
	v.currentTime = (i + 0.5) / fps;
	await there;
	await shown;
	const c = document.createElement("canvas");
	[c.width, c.height] = [v.videoWidth, v.videoHeight];
	c.getContext("2d").drawImage(v, 0, 0);
	return c.toDataURL("image/png").split(",")[1];
}
async function played(fps) {
	await frameAt(0, fps);
	const count = () => v.getVideoPlaybackQuality().totalVideoFrames, before = count(), end = met("ended");
	await v.play();
	await end;
	return {Seconds: v.currentTime, Frames: count() - before};
}
</script>`

// A browser opens the film, goes to any frame of it and shows that frame, and plays it to its end. The canvas holds
// what was filmed but for what coding loses, colours included: 37 dB, a root mean square of 3.6 levels. (With a decoder
// of our choice it is 38, see TestFramesComeBack; the browser spreads chroma over the pixels in its own way. With the
// matrix of BT.709 in the film's header it is 35, with the full range 34.) And it is nearer to that frame than to any
// other.
func TestBrowserPlaysTheFilm(t *testing.T) {
	const count, playbackFPS = 24, 25
	for _, size := range []image.Point{{320, 240}, {321, 181}} {
		t.Run(fmt.Sprintf("%d x %d", size.X, size.Y), func(t *testing.T) {
			var pictures []image.Image
			for i := range count {
				pictures = append(pictures, falling(i, size.X, size.Y))
			}
			film := filmOf(t, playbackFPS, pictures...)
			mux := http.NewServeMux()
			mux.HandleFunc("/", func(w http.ResponseWriter, _ *http.Request) { _, _ = w.Write([]byte(page)) })
			mux.HandleFunc("/film.webm", func(w http.ResponseWriter, r *http.Request) {
				w.Header().Set("Content-Type", "video/webm")
				http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(film))
			})
			server := httptest.NewServer(mux)
			defer server.Close()
			ctx := browsertest.Start(t)
			require.NoError(t, chromedp.Do(ctx, chromedp.Navigate(server.URL)))

			type told struct {
				Width, Height int
				Seconds       float64
			}
			got := evaluate[told](t, ctx, "opened()")
			require.Equal(t, told{size.X, size.Y, float64(count) / playbackFPS}, got)

			for _, i := range []int{17, 3, 0, 23, 11} {
				shown := canvas(t, evaluate[string](t, ctx, fmt.Sprintf("frameAt(%d, %d)", i, playbackFPS)))
				right := psnr(t, pictures[i].(*image.RGBA), shown)
				require.Greater(t, right, 37.0, "frame %d", i)
				for j, other := range pictures {
					if j != i {
						require.Less(t, psnr(t, other.(*image.RGBA), shown), right, "frame %d shows %d", i, j)
					}
				}
			}
			played := evaluate[struct {
				Seconds float64
				Frames  int
			}](t, ctx, fmt.Sprintf("played(%d)", playbackFPS))
			require.InDelta(t, got.Seconds, played.Seconds, 1e-3)
			require.Positive(t, played.Frames, "how many a machine that is busy skips is its own affair")
		})
	}
}

func evaluate[T any](t *testing.T, ctx context.Context, script string) T {
	t.Helper()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	require.NoError(t, err, script)
	return v
}

func canvas(t *testing.T, encoded string) *image.RGBA {
	t.Helper()
	m, err := png.Decode(base64.NewDecoder(base64.StdEncoding, strings.NewReader(encoded)))
	require.NoError(t, err)
	shown := image.NewRGBA(m.Bounds())
	draw.Draw(shown, shown.Rect, m, image.Point{}, draw.Src)
	return shown
}
