package jpeg

import (
	"encoding/binary"
	"image"
)

// The second bytes of markers (table B.1).
const (
	startOfImage       = 0xd8
	jfif               = 0xe0
	quantisationTables = 0xdb
	baselineFrame      = 0xc0
	huffmanTables      = 0xc4
	startOfScan        = 0xda
	endOfImage         = 0xd9
)

// segment appends a marker and its segment: its length in two bytes, those included, and its data (B.1.1.4).
func segment(file []byte, marker byte, data []byte) []byte {
	file = binary.BigEndian.AppendUint16(append(file, 0xff, marker), uint16(2+len(data)))
	return append(file, data...)
}

// header begins a file: all that comes before the scan's bits. Components are numbered from 1 and named as
// JFIF, for which three are YCbCr; step is how many pixels across and down share one of chroma.
func header(size image.Point, tables [][64]uint8, components, step int) []byte {
	file := []byte{0xff, startOfImage}
	// JFIF 1.02: the name, the version, 1 by 1 without a unit as shape of a pixel, no thumbnail (from memory).
	file = segment(file, jfif, []byte("JFIF\x00\x01\x02\x00\x00\x01\x00\x01\x00\x00"))

	var quantisers, codes []byte
	for kind, table := range tables {
		quantisers = append(append(quantisers, byte(kind)), table[:]...)
		codes = dcTables[kind].append(codes, byte(kind))
		codes = acTables[kind].append(codes, 0x10|byte(kind))
	}
	file = segment(file, quantisationTables, quantisers) // B.2.4.1
	file = segment(file, huffmanTables, codes)           // B.2.4.2

	frame := []byte{8} // bits of a pixel (B.2.2)
	frame = binary.BigEndian.AppendUint16(frame, uint16(size.Y))
	frame = binary.BigEndian.AppendUint16(frame, uint16(size.X))
	parts := []byte{byte(components)} // B.2.3
	frame = append(frame, byte(components))
	for i := range components {
		kind, sampling := byte(min(i, 1)), byte(0x11)
		if components == 3 && i == 0 {
			sampling = byte(step<<4 | step) // blocks of luma across and down for one of chroma
		}
		frame = append(frame, byte(i+1), sampling, kind)
		parts = append(parts, byte(i+1), kind<<4|kind)
	}
	file = segment(file, baselineFrame, frame)
	return segment(file, startOfScan, append(parts, 0, 63, 0)) // all coefficients, all their bits
}

// append appends a table under its number.
func (h huffman) append(data []byte, number byte) []byte {
	return append(append(append(data, number), h.lengths[:]...), h.symbols...)
}
