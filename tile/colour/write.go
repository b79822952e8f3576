package colour

import (
	"bytes"
	"encoding/binary"
	"math"
)

// tag is an entry of a profile: its signature and its data.
type tag struct {
	signature string
	data      []byte
}

// displayProfile lays out a display profile of version 2.4 that connects to XYZ (ICC.1:2001-04, 6.1 and 6.2;
// clauses in this file are recalled from memory). Tags with equal data share it.
func displayProfile(space string, tags []tag) []byte {
	be := binary.BigEndian
	header := make([]byte, headerBytes)
	copy(header[8:], []byte{0x02, 0x40}) // version 2.4.0
	copy(header[12:], "mntr")
	copy(header[16:], space)
	copy(header[20:], "XYZ ")
	// A date is asked for, and the time of day would make files differ from run to run: this one is always the same.
	for i, v := range []uint16{2000, 1, 1} {
		be.PutUint16(header[24+2*i:], v)
	}
	copy(header[36:], "acsp")
	copy(header[68:], xyzData(d50)[8:]) // illuminant; the intent before it stays 0, perceptual

	table := be.AppendUint32(nil, uint32(len(tags)))
	var data []byte
	dataStart := tableAt + entryBytes*len(tags)
	offsets := map[string]int{}
	for _, tag := range tags {
		offset, known := offsets[string(tag.data)]
		if !known {
			offset = dataStart + len(data)
			offsets[string(tag.data)] = offset
			data = append(data, tag.data...)
			data = append(data, make([]byte, -len(data)&3)...) // tags begin at multiples of four
		}
		table = append(table, tag.signature...)
		table = be.AppendUint32(table, uint32(offset))
		table = be.AppendUint32(table, uint32(len(tag.data)))
	}
	profile := bytes.Join([][]byte{header, table, data}, nil)
	be.PutUint32(profile, uint32(len(profile)))
	return profile
}

// xyzData is an XYZType of one colour, in s15Fixed16 numbers (ICC.1:2001-04, 5.3 and 6.5).
func xyzData(v [3]float64) []byte {
	data := append([]byte("XYZ "), 0, 0, 0, 0)
	for _, c := range v {
		data = binary.BigEndian.AppendUint32(data, uint32(int32(math.Round(c*65536))))
	}
	return data
}

// curvePoints is how finely a curve is given; between two points a reader draws a straight line.
const curvePoints = 1024

// curveData is a curveType of f from 0..1 to 0..1 (ICC.1:2001-04, 6.5).
func curveData(f func(float64) float64) []byte {
	data := append([]byte("curv"), 0, 0, 0, 0)
	data = binary.BigEndian.AppendUint32(data, curvePoints)
	for i := range curvePoints {
		v := math.Round(f(float64(i)/(curvePoints-1)) * math.MaxUint16)
		data = binary.BigEndian.AppendUint16(data, uint16(v))
	}
	return data
}

// textData is a textType (ICC.1:2001-04, 6.5): ASCII, ended by a zero.
func textData(text string) []byte {
	return append([]byte("text\x00\x00\x00\x00"+text), 0)
}

// descriptionData is a textDescriptionType (ICC.1:2001-04, 6.5) with only its ASCII part.
func descriptionData(text string) []byte {
	data := append([]byte("desc"), 0, 0, 0, 0)
	data = binary.BigEndian.AppendUint32(data, uint32(len(text)+1))
	data = append(append(data, text...), 0)
	const emptyUnicode, emptyScript = 4 + 4, 2 + 1 + 67 // language and count; code, count and fixed field
	return append(data, make([]byte, emptyUnicode+emptyScript)...)
}
