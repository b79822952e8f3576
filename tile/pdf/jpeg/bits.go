package jpeg

import "encoding/binary"

// bitStream is entropy-coded data: bytes that are full, and bits that still fill none. A zero byte stands
// after each of 255 (F.1.2.3).
type bitStream struct {
	out     []byte
	word    uint64 // its lowest bits are still to be written, what stands above them has been
	pending uint   // how many are, up to 64
}

// put appends a code and what follows it. (It takes and returns a bitStream's three values for the compiler
// to keep them in registers.)
func put(out []byte, word uint64, pending uint, c code) ([]byte, uint64, uint) {
	number, length := uint64(c&numberOfCode), uint(c>>lengthAt)
	if pending += length; pending > 64 {
		pending -= 64
		out = appendWord(out, word<<(length-pending)|number>>pending)
	}
	return out, word<<length | number, pending
}

// appendWord appends 8 bytes.
func appendWord(out []byte, word uint64) []byte {
	// Adding one takes the top bit from a byte of 255, and from no other unless such a byte is below it.
	const ones = 0x0101010101010101
	if word&^(word+ones)&(ones<<7) == 0 {
		return binary.BigEndian.AppendUint64(out, word)
	}
	for shift := 56; shift >= 0; shift -= 8 {
		out = appendByte(out, byte(word>>shift))
	}
	return out
}

func appendByte(out []byte, b byte) []byte {
	if b == 0xff {
		return append(out, b, 0)
	}
	return append(out, b)
}

// finish fills the last byte with ones (F.1.2.3) and returns all.
func (s *bitStream) finish() []byte {
	out, word, pending := put(s.out, s.word, s.pending, 7<<lengthAt|0x7f)
	for ; pending >= 8; pending -= 8 {
		out = appendByte(out, byte(word>>(pending-8)))
	}
	return out
}
