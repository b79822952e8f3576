package jpeg

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// Against bits set one by one.
func TestBits(t *testing.T) {
	const seed = 3
	rng := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		var s bitStream
		var plain []byte
		bits := 0
		set := func(bit byte) {
			if bits%8 == 0 {
				plain = append(plain, 0)
			}
			plain[bits/8] |= bit << (7 - bits%8)
			bits++
		}
		ones := rng.IntN(2) == 0 // many bytes of 255
		for range rng.IntN(60) {
			length := 1 + rng.IntN(26)
			number := rng.Uint32() & (1<<length - 1)
			if ones && rng.IntN(4) > 0 {
				number = 1<<length - 1
			}
			for i := length - 1; i >= 0; i-- {
				set(byte(number >> i & 1))
			}
			s.out, s.word, s.pending = put(s.out, s.word, s.pending, code(length<<lengthAt)|code(number))
		}
		for bits%8 != 0 {
			set(1)
		}
		var want []byte
		for _, b := range plain {
			if want = append(want, b); b == 0xff {
				want = append(want, 0)
			}
		}
		require.Equal(t, want, s.finish(), "seed %d", seed)
	}
}
