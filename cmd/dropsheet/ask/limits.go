package ask

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/tile/artwork"
	"dropsheet/tile/job"
)

// addLimits registers the bounds on an artwork's size, which keep a small file that claims to be a giant from taking
// all memory.
func addLimits(flags *pflag.FlagSet, into *artwork.Limits) {
	add(flags, &into.Pixels, "max-pixels", "N", fmt.Sprint(int(artwork.DefaultMaxPixels)), func(s string) (int, error) {
		n, err := strconv.Atoi(s)
		if err != nil || n < 1 || n > job.MostPixels {
			return 0, fmt.Errorf("%q can't be taken\nhint: write a whole number of pixels, from 1 to %d", s, int(job.MostPixels))
		}
		return n, nil
	}, "most pixels that an artwork may have, its width times its height")
	add(flags, &into.Bytes, "max-memory", "size", fmt.Sprintf("%dMB", int(artwork.DefaultMaxBytes/1e6)), memory,
		"most memory that an artwork may take")
}

// memory reads an amount of memory, in bytes.
func memory(s string) (int64, error) {
	for unit, bytes := range map[string]float64{"MB": 1e6, "GB": 1e9} {
		number, ok := strings.CutSuffix(s, unit)
		if !ok {
			continue
		}
		n, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
		if err == nil && n*bytes >= 1e6 && n*bytes <= job.MostBytes {
			return int64(math.Round(n * bytes)), nil
		}
	}
	return 0, fmt.Errorf("%q can't be taken\nhint: write it in MB or GB, such as 800MB or 2GB, from 1MB to %dGB", s,
		int(job.MostBytes/1e9))
}
