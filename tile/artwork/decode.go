package artwork

import (
	"crypto/sha256"
	"fmt"
	"image"
	"runtime/debug"

	"dropsheet/tile/colour"
)

// decode decodes a whole file that is in memory. It may keep no part of data, so that the file's bytes can be freed.
func decode(data []byte, limits Limits) (*Picture, error) {
	h, err := readHeader(inMemory(data), limits)
	if err != nil {
		return nil, err
	}
	decoded, err := h.format.decode(data)
	if err != nil {
		return nil, undecodable(err)
	}
	if b := decoded.Bounds(); b.Dx() != h.width || b.Dy() != h.height {
		return nil, fmt.Errorf("its header says %d x %d pixels and its data hold %d x %d; open it in a picture editor "+
			"and save it anew",
			h.width, h.height, b.Dx(), b.Dy())
	}
	if _, cmyk := decoded.(*image.CMYK); cmyk {
		h.icc = nil // the profile is of the inks, which are gone
	}
	compacted, notes, err := compact(decoded, h.grey)
	if err != nil {
		return nil, undecodable(err)
	}
	h.warnings = append(h.warnings, notes...)
	if h.icc != nil {
		if err := colour.CheckProfile(h.icc, isGrey(compacted)); err != nil {
			h.dropProfile(err)
		}
	}
	return &Picture{
		Image:    compacted,
		Upright:  h.turn,
		ICC:      h.icc,
		SHA256:   sha256.Sum256(data),
		Format:   h.format.name,
		Warnings: h.warnings,
	}, nil
}

// panicError is a panic told as an error.
type panicError struct {
	value any
	stack []byte // where it came from; for whoever mends it, too long for a message
}

func (e *panicError) Error() string {
	return fmt.Sprintf("the picture makes its decoder fail (%v); open it in a picture editor and save it anew", e.value)
}

// guarded runs f and returns a panic in it, which only a hostile file brings about, as an error.
func guarded[T any](f func() (T, error)) (result T, err error) {
	defer func() {
		if v := recover(); v != nil {
			err = &panicError{v, debug.Stack()}
		}
	}()
	return f()
}
