package main

import (
	"errors"
	"fmt"
	"strconv"

	"github.com/spf13/pflag"

	"dropsheet/tile/artwork"
)

// mostPixels is as far as the bound on an artwork can be raised: more than any memory holds.
const mostPixels = 1e11

// addMaxPixels registers the bound on an artwork's size, which keeps a small file that claims to be a giant
// from taking all memory.
func addMaxPixels(flags *pflag.FlagSet, into *int) {
	add(flags, into, "max-pixels", "N", fmt.Sprint(int(artwork.DefaultMaxPixels)), func(s string) (int, error) {
		n, err := strconv.Atoi(s)
		if err != nil || n < 1 || n > mostPixels {
			return 0, fmt.Errorf("%q can't be taken: write a whole number of pixels, from 1 to %d", s, int(mostPixels))
		}
		return n, nil
	}, "most pixels that an artwork may have, its width times its height")
}

// hintMaxPixels adds to the error of a picture that is over the bound what would let it in.
func hintMaxPixels(err error) error {
	var tooMany *artwork.TooManyPixelsError
	if !errors.As(err, &tooMany) {
		return err
	}
	if float64(tooMany.WidthPx)*float64(tooMany.HeightPx) > mostPixels {
		return fmt.Errorf("%w\nhint: --max-pixels goes up to %d, which is not enough here", err, int(mostPixels))
	}
	return fmt.Errorf("%w\nhint: if there is memory for it, --max-pixels %d lets it in", err,
		tooMany.WidthPx*tooMany.HeightPx)
}
