//go:build browser

package browsertest

import (
	"context"
	"os"
	"os/exec"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// path finds a Chromium: the one that CHROME names, or one installed by Debian's packages. chromedp does not look for
// chromium-headless-shell.
func path(t *testing.T) string {
	t.Helper()
	candidates := []string{"chromium-headless-shell", "chromium", "google-chrome"}
	if named := os.Getenv("CHROME"); named != "" {
		candidates = []string{named}
	}
	for _, name := range candidates {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	require.FailNow(t, "no browser", "none of %v is installed: install one, or say where one is with CHROME", candidates)
	return ""
}

// Patience is how long a test may wait for what must come, and how long a browser may take to start: a test fails for
// what does not come at all, never for what comes late on a busy machine.
const Patience = 10 * time.Minute

// profile is a folder for what a browser keeps. Processes of its own may outlive it for a moment and write there yet,
// so that it does not go at the first try.
func profile(t *testing.T) string {
	t.Helper()
	folder, err := os.MkdirTemp("", "browser-")
	require.NoError(t, err)
	t.Cleanup(func() {
		require.Eventually(t, func() bool { return os.RemoveAll(folder) == nil }, Patience, 50*time.Millisecond)
	})
	return folder
}

// Start starts a Chromium that talks to this machine alone, until the test ends.
func Start(t *testing.T) context.Context {
	t.Helper()
	options := []chromedp.ExecAllocatorOption{
		chromedp.ExecPath(path(t)), chromedp.UserDataDir(profile(t)), chromedp.WSURLReadTimeout(Patience),
		chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
	}
	for _, flag := range []string{"disable-quic", "disable-background-networking", "disable-component-update",
		"disable-sync"} {
		options = append(options, chromedp.Flag(flag, true))
	}
	ctx, stop := context.WithTimeout(t.Context(), 3*Patience)
	t.Cleanup(stop)
	ctx, wait := chromedp.NewExecAllocator(ctx, options...)
	t.Cleanup(wait)
	ctx, end := chromedp.NewContext(ctx)
	t.Cleanup(end)
	return ctx
}
