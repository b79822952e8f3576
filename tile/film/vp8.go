package film

import (
	"bytes"
	"compress/gzip"
	"context"
	_ "embed"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"image/draw"
	"io"
	"sync"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
)

// libwebp's encoder, whose lossy pictures are VP8 key frames (RFC 9649, 2.5). Where it comes from is told beside it.
//
//go:embed libwebp/webp.wasm.gz
var libwebp []byte

const (
	// quality, of 100: at 95 files are half as large again and a decibel nearer to the pictures.
	quality = 90
	// effort, of 6: at 0 files are a fifth larger, at 4 they are a thirtieth smaller and take twice the time.
	effort = 2
)

// A library is libwebp made ready for this processor.
type library struct {
	runtime wazero.Runtime
	module  wazero.CompiledModule
}

// loaded makes the library ready once, which takes a fifth of a second.
var loaded = sync.OnceValues(func() (*library, error) { return load(wazero.NewRuntimeConfig()) })

func load(config wazero.RuntimeConfig) (*library, error) {
	r, err := gzip.NewReader(bytes.NewReader(libwebp))
	if err != nil {
		return nil, fmt.Errorf("the film's encoder: %w", err)
	}
	code, err := io.ReadAll(r)
	if err != nil {
		return nil, fmt.Errorf("the film's encoder: %w", err)
	}
	runtime := wazero.NewRuntimeWithConfig(context.Background(), config)
	module, err := runtime.CompileModule(context.Background(), code)
	if err != nil {
		return nil, fmt.Errorf("the film's encoder can't run here: %w", err)
	}
	return &library{runtime, module}, nil
}

// An encoder turns pictures of one size into VP8 key frames.
type encoder struct {
	size         image.Point
	module       api.Module // has its own memory
	call, free   api.Function
	pixels, told uint32 // where in that memory a picture lies, and the length of what it has become
}

func (l *library) newEncoder(size image.Point) (*encoder, error) {
	ctx := context.Background()
	module, err := l.runtime.InstantiateModule(ctx, l.module, wazero.NewModuleConfig().WithStartFunctions("_initialize"))
	if err != nil {
		return nil, fmt.Errorf("the film's encoder can't start: %w", err)
	}
	e := &encoder{size: size, module: module, call: module.ExportedFunction("encode"),
		free: module.ExportedFunction("free")}
	pixelBytes := uint32(4 * size.X * size.Y)
	at, err := module.ExportedFunction("malloc").Call(ctx, uint64(pixelBytes)+4)
	if err == nil && at[0] == 0 {
		err = errors.New("too little memory")
	}
	if err != nil {
		return nil, errors.Join(fmt.Errorf("the film's encoder can't take frames of %d x %d pixels: %w\n"+
			"hint: choose smaller ones",
			size.X, size.Y, err), e.close())
	}
	e.pixels = uint32(at[0])
	e.told = e.pixels + pixelBytes
	return e, nil
}

// encode returns the key frame of a picture of the encoder's size.
func (e *encoder) encode(picture image.Image) ([]byte, error) {
	ctx := context.Background()
	memory := e.module.Memory()
	pix, _ := memory.Read(e.pixels, e.told-e.pixels) // a window on the memory: what is drawn there is the encoder's
	canvas := &image.RGBA{Pix: pix, Stride: 4 * e.size.X, Rect: image.Rectangle{Max: e.size}}
	draw.Draw(canvas, canvas.Rect, image.Black, image.Point{}, draw.Src)
	draw.Draw(canvas, canvas.Rect, picture, picture.Bounds().Min, draw.Over)

	const rgba, lossy, exact = 0, 0, 0
	at, err := e.call.Call(ctx, uint64(e.pixels), uint64(e.size.X), uint64(e.size.Y), uint64(e.told),
		rgba, quality, effort, lossy, exact)
	if err != nil {
		return nil, fmt.Errorf("the encoder: %w", err)
	}
	if at[0] == 0 {
		return nil, errors.New("the encoder can't hold its detail or has too little memory\nhint: choose smaller frames")
	}
	length, _ := memory.ReadUint32Le(e.told)
	file, ok := memory.Read(uint32(at[0]), length)
	if !ok {
		return nil, errors.New("the encoder's answer lies outside its memory")
	}
	frame, err := keyFrame(file)
	if err != nil {
		return nil, err
	}
	frame = bytes.Clone(frame)
	if _, err := e.free.Call(ctx, at[0]); err != nil {
		return nil, fmt.Errorf("the encoder: %w", err)
	}
	return frame, nil
}

func (e *encoder) close() error {
	return e.module.Close(context.Background())
}

// keyFrame returns the content of a simple WebP file's one chunk (RFC 9649, 2.5): RIFF, the length, WEBP, and the
// chunk's name and length come first.
func keyFrame(file []byte) ([]byte, error) {
	const head = 20
	if len(file) < head || string(file[:4]) != "RIFF" || string(file[8:16]) != "WEBPVP8 " {
		return nil, fmt.Errorf("the encoder's answer begins with %q, not as a lossy picture does",
			file[:min(len(file), head)])
	}
	length := binary.LittleEndian.Uint32(file[16:])
	if uint64(length) > uint64(len(file)-head) {
		return nil, fmt.Errorf("the encoder's answer has %d bytes and says %d", len(file)-head, length)
	}
	return file[head:][:length], nil
}
