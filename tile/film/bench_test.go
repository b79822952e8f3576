package film

import (
	"fmt"
	"image"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/tetratelabs/wazero"
)

// BenchmarkFilm writes films of 48 frames and tells how large they are.
func BenchmarkFilm(b *testing.B) {
	for _, size := range []image.Point{{640, 480}, {1920, 1080}} {
		var pictures []image.Image
		for i := range 48 {
			pictures = append(pictures, falling(i%24, size.X, size.Y))
		}
		b.Run(fmt.Sprintf("%dx%d", size.X, size.Y), func(b *testing.B) {
			var bytes int
			for b.Loop() {
				bytes = len(filmOf(b, 25, pictures...))
			}
			b.ReportMetric(float64(bytes)/1000, "kB")
		})
	}
}

// BenchmarkLoad makes the encoder ready, which the first film of a process waits for.
func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		lib, err := load(wazero.NewRuntimeConfig())
		require.NoError(b, err)
		require.NoError(b, lib.runtime.Close(b.Context()))
	}
}
