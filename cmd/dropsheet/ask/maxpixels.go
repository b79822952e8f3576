package ask

import (
	"fmt"
	"strconv"

	"github.com/spf13/pflag"

	"dropsheet/tile/artwork"
	"dropsheet/tile/job"
)

// addMaxPixels registers the bound on an artwork's size, which keeps a small file that claims to be a giant
// from taking all memory.
func addMaxPixels(flags *pflag.FlagSet, into *int) {
	add(flags, into, "max-pixels", "N", fmt.Sprint(int(artwork.DefaultMaxPixels)), func(s string) (int, error) {
		n, err := strconv.Atoi(s)
		if err != nil || n < 1 || n > job.MostPixels {
			return 0, fmt.Errorf("%q can't be taken: write a whole number of pixels, from 1 to %d", s, int(job.MostPixels))
		}
		return n, nil
	}, "most pixels that an artwork may have, its width times its height")
}
