package pdfium

import (
	"context"
	"io"
	"time"

	pdfium "github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/experimental"
)

// Engine is PDFium, running. It serves one goroutine at a time.
type Engine struct {
	pdfium.Pdfium
	pool pdfium.Pool
}

// Bounds on an engine, of which zero stands for none.
type Bounds struct {
	MemoryMB int // of PDFium's whole memory, the file and the page's pixels included
}

// mbPages are the pages of WebAssembly's memory, of 64 KiB each (WebAssembly Core Specification 1.0, 4.2.8), in a MiB.
const mbPages = 16

// Start starts PDFium; once ctx ends, whatever it does is broken off. Its machine code is kept in the folder and taken
// from there the next time, which saves some 3 s of processor time; "" keeps none. Close it.
func Start(ctx context.Context, folder string, bounds Bounds) (engine *Engine, err error) {
	if bounds.MemoryMB > 0 {
		ctx = experimental.WithMemoryAllocator(ctx, experimental.MemoryAllocatorFunc(bounds.allocate))
	}
	err = withCompiled(folder, func(config wazero.RuntimeConfig) error {
		config = config.WithCloseOnContextDone(ctx.Done() != nil) // looking costs each call a goroutine
		if bounds.MemoryMB > 0 {
			config = config.WithMemoryLimitPages(uint32(bounds.MemoryMB * mbPages))
		}
		pool, err := webassembly.Init(webassembly.Config{
			Context: ctx, MinIdle: 1, MaxIdle: 1, MaxTotal: 1, RuntimeConfig: config,
			FSConfig: wazero.NewFSConfig(), // nothing of ours; without it all files would be there
			Stdout:   io.Discard, Stderr: io.Discard,
			RandomSource: zeros{}, // the same file shall give the same pixels
		})
		if err != nil {
			return err
		}
		pdf, err := pool.GetInstance(time.Minute)
		if err != nil {
			pool.Close()
			return err
		}
		engine = &Engine{pdf, pool}
		return nil
	})
	return engine, err
}

// Close ends the engine and frees its memory.
func (e *Engine) Close() error { return e.pool.Close() }

// zeros is a source of zeros without end.
type zeros struct{}

func (zeros) Read(p []byte) (int, error) {
	clear(p)
	return len(p), nil
}
