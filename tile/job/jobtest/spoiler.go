package jobtest

import (
	"bytes"
	"encoding/json"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Spoiler spoils job files: as text, and as the values that they hold.
type Spoiler struct{ r *rand.Rand }

// NewSpoiler spoils by chance from a seed.
func NewSpoiler(seed uint64) Spoiler { return Spoiler{rand.New(rand.NewPCG(seed, seed))} }

// Spoil returns a job file with a few things wrong in it.
func (s Spoiler) Spoil(t *testing.T, file []byte) []byte {
	if s.r.IntN(3) == 0 {
		return s.text(file)
	}
	var tree any
	require.NoError(t, json.Unmarshal(file, &tree))
	for range 1 + s.r.IntN(2) {
		tree = s.value(tree)
	}
	out, err := json.Marshal(tree)
	require.NoError(t, err)
	// JSON knows numbers that no float64 holds, and that Marshal does not write.
	return bytes.ReplaceAll(out, []byte(`"1e999"`), []byte(`1e999`))
}

func (s Spoiler) text(file []byte) []byte {
	text := slices.Clone(file)
	at := s.r.IntN(len(text))
	to := min(len(text), at+s.r.IntN(300))
	switch s.r.IntN(5) {
	case 0:
		return text[:at]
	case 1:
		return slices.Delete(text, at, to)
	case 2:
		return slices.Insert(text, s.r.IntN(len(text)), slices.Clone(text[at:to])...)
	case 3:
		return slices.Insert(text, at, []byte(strings.Repeat("[", 20_000))...)
	default:
		for range 1 + s.r.IntN(4) {
			text[s.r.IntN(len(text))] ^= 1 << s.r.IntN(8)
		}
		return text
	}
}

// value goes down to one value of the tree and spoils it.
func (s Spoiler) value(v any) any {
	switch v := v.(type) {
	case map[string]any:
		if len(v) > 0 && s.r.IntN(12) > 0 {
			keys := slices.Sorted(maps.Keys(v))
			key := keys[s.r.IntN(len(keys))]
			if s.r.IntN(20) == 0 {
				delete(v, key)
			} else {
				v[key] = s.value(v[key])
			}
			return v
		}
	case []any:
		if len(v) > 0 && s.r.IntN(12) > 0 {
			i := s.r.IntN(len(v))
			switch s.r.IntN(20) {
			case 0:
				return slices.Delete(v, i, i+1)
			case 1:
				return append(v, v[i])
			case 2:
				v[i], v[0] = v[0], v[i]
				return v
			}
			v[i] = s.value(v[i])
			return v
		}
	case float64:
		if s.r.IntN(2) == 0 && math.Abs(v) < 1e100 { // spoilt once already otherwise
			return v * []float64{-1, 0.5, 1.5, 1 + 1e-9, 10, 1e6, 1e-6}[s.r.IntN(7)]
		}
	}
	return []any{
		nil, true, 0, -1, 1, 2, 0.5, 1e-300, 1e18, -1e18, math.MaxFloat64, math.MaxInt32, int64(math.MaxInt64), "1e999", "",
		"nan", // read as such a number, yet not as Go writes one: who finds that told knows that it was worked out
		"../../..",
		"/etc/passwd", "\x1b[2J", strings.Repeat("long ", 1000), map[string]any{}, []any{}, []any{1, "a", nil},
	}[s.r.IntN(23)]
}
