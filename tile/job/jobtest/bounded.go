package jobtest

import (
	"context"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// hangGuard is far longer than any small job takes on a busy machine; only what would never end runs into it.
const hangGuard = 2 * time.Minute

// Bounded does work that must end. It returns how many bytes that took from the heap, freed or not, which
// bounds its peak.
func Bounded(t *testing.T, what string, work func()) (took int) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), hangGuard)
	defer cancel()
	done := make(chan any, 1)
	go func() {
		defer func() { done <- recover() }()
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		work()
		runtime.ReadMemStats(&after)
		took = int(after.TotalAlloc - before.TotalAlloc)
	}()
	select {
	case panicked := <-done:
		require.Nil(t, panicked, what)
	case <-ctx.Done():
		require.FailNow(t, "it hangs", what)
	}
	return took
}
