package film

import (
	"encoding/hex"
	"testing"

	"github.com/stretchr/testify/require"
)

// Against RFC 8794, 4.3 and 4.4, and 6 (recalled from memory): all ones is kept for a size that is not known, so 127
// takes two bytes and 16383 three.
func TestSize(t *testing.T) {
	for _, c := range []struct {
		n    int
		want string
	}{
		{0, "80"}, {2, "82"}, {126, "fe"}, {127, "407f"}, {16382, "7ffe"}, {16383, "203fff"},
		{1<<21 - 2, "3ffffe"}, {1<<21 - 1, "101fffff"}, {1<<28 - 2, "1ffffffe"}, {1<<28 - 1, "080fffffff"},
		{1<<35 - 2, "0ffffffffe"},
	} {
		require.Equal(t, c.want, hex.EncodeToString(size(c.n)), "%d", c.n)
	}
	require.Equal(t, "0100000000000002", hex.EncodeToString(sizeIn8(2)))
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		n    uint64
		want string
	}{
		{0, "e78100"}, {255, "e781ff"}, {256, "e7820100"}, {1<<64 - 1, "e788ffffffffffffffff"},
	} {
		require.Equal(t, c.want, hex.EncodeToString(number(idTimestamp, c.n)), "%d", c.n)
	}
}
