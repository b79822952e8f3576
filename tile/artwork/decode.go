package artwork

import (
	"crypto/sha256"
	"fmt"
	"image"
	"image/color"
	"runtime/debug"

	"dropsheet/tile/colour"
)

// decode decodes a whole file that is in memory. It may keep no part of data, so that the file's bytes can be freed.
func decode(data []byte, r Reading) (*Picture, error) {
	h, err := readHeader(inMemory(data), r.Limits)
	if err != nil {
		return nil, err
	}
	decoded, err := h.format.decode(data, r.ground())
	if err != nil {
		return nil, undecodable(err)
	}
	if b := decoded.Bounds(); b.Dx() != h.width || b.Dy() != h.height {
		return nil, fmt.Errorf("its header says %d x %d pixels and its data hold %d x %d\nhint: open it in a picture editor "+
			"and save it anew",
			h.width, h.height, b.Dx(), b.Dy())
	}
	var inks *colour.Inks
	if _, cmyk := decoded.(*image.CMYK); cmyk {
		inks = h.inks(r)
		h.icc = nil // the profile is of the inks, which will be gone
	}
	dithered := !r.Rounded && deep(decoded)
	compacted, transparent, err := compact(decoded, h.grey, r.ground(), inks)
	if err != nil {
		return nil, undecodable(err)
	}
	if transparent {
		h.warnings = append(h.warnings, r.transparentWarning())
	}
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

		Transparent: transparent, InksByProfile: inks != nil, Dithered: dithered,
	}, nil
}

// inks is what turns a picture of inks into sRGB; nil for shares of red, green and blue, of which it warns.
func (h *header) inks(r Reading) *colour.Inks {
	switch {
	case h.icc == nil:
		h.warnings = append(h.warnings, warnCMYK)
		return nil
	case r.PlainInks:
		h.warnings = append(h.warnings, warnPlainInks)
		return nil
	}
	inks, err := colour.ReadInks(h.icc)
	if err != nil {
		h.warnings = append(h.warnings, fmt.Sprintf(warnInksProfile, err))
	}
	return inks
}

// under is what transparent parts are laid on.
func (r Reading) under() color.RGBA {
	if r.Under.A == 0 {
		return color.RGBA{0xff, 0xff, 0xff, 0xff}
	}
	return r.Under
}

// deep tells whether a picture is of 16 bits a sample, or was just read of such.
func deep(m image.Image) bool {
	switch m.(type) {
	case *image.Gray16, *image.RGBA64, *image.NRGBA64, laid:
		return true
	}
	return false
}

// ground is what becomes of the picture on its way to 8 opaque bits.
func (r Reading) ground() ground { return ground{r.under(), r.Rounded} }

func (r Reading) transparentWarning() string {
	if r.Under.A == 0 {
		return warnTransparent
	}
	return fmt.Sprintf(warnUnder, fmt.Sprintf("#%02x%02x%02x", r.Under.R, r.Under.G, r.Under.B))
}

// panicError is a panic told as an error.
type panicError struct {
	value any
	stack []byte // where it came from; for whoever mends it, too long for a message
}

func (e *panicError) Error() string {
	return fmt.Sprintf("the picture makes its decoder fail (%v)\nhint: open it in a picture editor and save it anew",
		e.value)
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
