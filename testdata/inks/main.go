// Command inks turns a picture into a TIFF file of inks with the profile of a press that never was, for .ci/run to
// make a job of:
//
//	go run ./testdata/inks PICTURE TIFF
package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	_ "image/jpeg"
	"os"

	"dropsheet/tile/colour/icctest"
)

func main() {
	if err := write(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// write stores the picture as TIFF 6.0 has CMYK (section 16, recalled from memory): one strip, uncompressed.
func write(from, to string) error {
	f, err := os.Open(from)
	if err != nil {
		return err
	}
	defer f.Close()
	picture, _, err := image.Decode(f)
	if err != nil {
		return err
	}
	b := picture.Bounds()
	var inks []byte
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := color.CMYKModel.Convert(picture.At(x, y)).(color.CMYK)
			inks = append(inks, c.C, c.M, c.Y, c.K)
		}
	}
	profile := icctest.Press()
	const short, long, undefined = 3, 4, 7
	fields := [][4]uint32{ // tag, type, count, value or offset
		{256, long, 1, uint32(b.Dx())}, {257, long, 1, uint32(b.Dy())}, {258, short, 4, 0}, {259, short, 1, 1},
		{262, short, 1, 5}, {273, long, 1, 0}, {277, short, 1, 4}, {278, long, 1, uint32(b.Dy())},
		{279, long, 1, uint32(len(inks))}, {34675, undefined, uint32(len(profile)), 0},
	}
	const head = 8
	depths := uint32(head + 2 + 12*len(fields) + 4)
	fields[2][3], fields[9][3] = depths, depths+8
	fields[5][3] = depths + 8 + uint32(len(profile)+len(profile)%2)
	var file bytes.Buffer
	put := func(v any) { _ = binary.Write(&file, binary.LittleEndian, v) } // to memory, which can't fail
	put([]uint16{'I' | 'I'<<8, 42})
	put([]uint32{head})
	put(uint16(len(fields)))
	for _, f := range fields {
		put([]uint16{uint16(f[0]), uint16(f[1])})
		put(f[2:])
	}
	put(uint32(0)) // no other picture
	put([]uint16{8, 8, 8, 8})
	put(profile)
	put(make([]byte, len(profile)%2))
	put(inks)
	return os.WriteFile(to, file.Bytes(), 0o600)
}
