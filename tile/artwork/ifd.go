package artwork

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
)

// directory is the first image file directory of a TIFF file, or of an EXIF block, which has the same form
// (TIFF 6.0, section 2; CIPA DC-008, 4.6.2; clauses in this file are recalled from memory).
type directory struct {
	src     source
	order   binary.ByteOrder
	entries []entry
}

// entry is one field: count values of a kind, held in value when they fit in four bytes, else where value points.
type entry struct {
	tag, kind uint16
	count     uint32
	value     []byte
}

// kindBytes gives the length of one value of each kind: TIFF 6.0, page 15.
var kindBytes = [...]int64{0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8}

var (
	errNotTIFF = errors.New("no TIFF header")
	errNoField = errors.New("no such field")
)

func readDirectory(src source) (directory, error) {
	d := directory{src: src}
	start, err := src.bytes(0, 8)
	if err != nil {
		return d, err
	}
	switch string(start[:4]) {
	case "II\x2a\x00":
		d.order = binary.LittleEndian
	case "MM\x00\x2a":
		d.order = binary.BigEndian
	default:
		return d, errNotTIFF
	}
	at := int64(d.order.Uint32(start[4:]))
	count, err := src.bytes(at, 2)
	if err != nil {
		return d, err
	}
	table, err := src.bytes(at+2, 12*int64(d.order.Uint16(count)))
	if err != nil {
		return d, err
	}
	for ; len(table) > 0; table = table[12:] {
		d.entries = append(d.entries, entry{
			tag:   d.order.Uint16(table),
			kind:  d.order.Uint16(table[2:]),
			count: d.order.Uint32(table[4:]),
			value: table[8:12],
		})
	}
	return d, nil
}

// field returns where the values of a tag lie, and of which kind they are. It fails with errNoField if there
// is no such tag.
func (d directory) field(tag uint16) (values source, kind uint16, err error) {
	for _, e := range d.entries {
		if e.tag != tag {
			continue
		}
		if int(e.kind) >= len(kindBytes) {
			return source{}, 0, fmt.Errorf("it is of the unknown kind %d", e.kind)
		}
		n := int64(e.count) * kindBytes[e.kind]
		if n <= 4 {
			return inMemory(e.value[:n]), e.kind, nil
		}
		at := int64(d.order.Uint32(e.value))
		if at > d.src.size || n > d.src.size-at {
			return source{}, 0, errors.New("it lies outside the file")
		}
		return d.src.part(at, n), e.kind, nil
	}
	return source{}, 0, errNoField
}

// numbers calls each with the values of a tag of kind BYTE, SHORT or LONG, one by one, until it returns false.
func (d directory) numbers(tag uint16, each func(v int64) bool) {
	values, kind, err := d.field(tag)
	if err != nil {
		return
	}
	b := make([]byte, 4096) // a multiple of every length, so that no value is split
	for at := int64(0); at < values.size; at += int64(len(b)) {
		n, err := values.ReadAt(b, at)
		if err != nil && err != io.EOF {
			return
		}
		for rest := b[:n]; len(rest) > 0; {
			var v int64
			switch {
			case kind == 1:
				v, rest = int64(rest[0]), rest[1:]
			case kind == 3 && len(rest) >= 2:
				v, rest = int64(d.order.Uint16(rest)), rest[2:]
			case kind == 4 && len(rest) >= 4:
				v, rest = int64(d.order.Uint32(rest)), rest[4:]
			default:
				return
			}
			if !each(v) {
				return
			}
		}
	}
}

// number returns the first value of a tag, or otherwise when there is none.
func (d directory) number(tag uint16, otherwise int64) int64 {
	d.numbers(tag, func(v int64) bool {
		otherwise = v
		return false
	})
	return otherwise
}
