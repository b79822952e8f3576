package film

import (
	"encoding/binary"
	"math"
	"math/bits"
	"slices"
)

// element lays an element: its identifier, which carries its own length marker, the size of its content in as few
// bytes as it takes, and the content (RFC 8794, 4 to 7).
func element(id uint32, content ...[]byte) []byte {
	length := 0
	for _, c := range content {
		length += len(c)
	}
	return slices.Concat(append([][]byte{identifier(id), size(length)}, content...)...)
}

func identifier(id uint32) []byte {
	return trimmed(uint64(id))
}

// size lays n as a variable-size integer: as many leading zeros as bytes follow the first one, a 1, and then n.
// All bits set would mean that the size is not known, so n must be smaller.
func size(n int) []byte {
	width := 1
	for n >= 1<<(7*width)-1 {
		width++
	}
	return binary.BigEndian.AppendUint64(nil, uint64(n)|1<<(7*width))[8-width:]
}

// sizeIn8 lays n as size does, always in eight bytes.
func sizeIn8(n int64) []byte {
	return binary.BigEndian.AppendUint64(nil, uint64(n)|1<<56)
}

// number lays an unsigned integer in as few bytes as it takes.
func number(id uint32, n uint64) []byte {
	return element(id, trimmed(n))
}

// numberIn8 lays an unsigned integer in eight bytes, for one that is not known yet.
func numberIn8(id uint32, n int64) []byte {
	return element(id, binary.BigEndian.AppendUint64(nil, uint64(n)))
}

func float(id uint32, x float64) []byte {
	return element(id, binary.BigEndian.AppendUint64(nil, math.Float64bits(x)))
}

func text(id uint32, s string) []byte {
	return element(id, []byte(s))
}

func trimmed(n uint64) []byte {
	return binary.BigEndian.AppendUint64(nil, n)[min(bits.LeadingZeros64(n)/8, 7):]
}
