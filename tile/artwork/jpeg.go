package artwork

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/jpeg"
	"io"
	"strings"
)

// JPEG markers: ITU-T T.81, table B.1; clauses in this file are recalled from memory.
const (
	markTEM   = 0x01
	markSOF0  = 0xc0
	markSOF2  = 0xc2
	markRST0  = 0xd0
	markSOI   = 0xd8
	markEOI   = 0xd9
	markSOS   = 0xda
	markAPP1  = 0xe1
	markAPP2  = 0xe2
	markAPP14 = 0xee
)

// walkJPEG calls visit with every marker segment of a JPEG file, in order, until visit returns false or the
// picture ends. body is good only during the call. Coded data and stray bytes between segments are passed
// over, as the decoder does.
func walkJPEG(r io.Reader, visit func(marker byte, body []byte) bool) {
	br := bufio.NewReaderSize(r, 1<<16)
	room := make([]byte, 1<<16)
	for {
		_, err := br.ReadSlice(0xff)
		for err == bufio.ErrBufferFull {
			_, err = br.ReadSlice(0xff)
		}
		marker := byte(0xff)
		for err == nil && marker == 0xff { // fill bytes: T.81, B.1.1.2
			marker, err = br.ReadByte()
		}
		if err != nil || marker == markEOI {
			return
		}
		if marker == 0 || marker == markTEM || marker >= markRST0 && marker <= markSOI {
			continue // a data byte or a marker without a segment: T.81, B.1.1.3 and B.1.1.5
		}
		if _, err := io.ReadFull(br, room[:2]); err != nil {
			return
		}
		n := int(binary.BigEndian.Uint16(room)) - 2 // the length counts itself: T.81, B.1.1.4
		if n < 0 {
			return
		}
		if _, err := io.ReadFull(br, room[:n]); err != nil || !visit(marker, room[:n]) {
			return
		}
	}
}

func inspectJPEG(src source, h *header) error {
	var chunks iccChunks
	var exif bool
	var inks inksMarks
	walkJPEG(src.reader(), func(marker byte, body []byte) bool {
		inks.see(marker, body)
		if isFrame(marker) {
			h.decoding = jpegDecoding(marker, body, h.pixels())
		}
		switch {
		case marker == markAPP1 && !exif && bytes.HasPrefix(body, []byte(exifSignature)):
			exif = true // XMP uses APP1 as well
			h.turn = exifUpright(inMemory(body))
		case marker == markAPP2 && bytes.HasPrefix(body, []byte(iccSignature)):
			chunks.add(body[len(iccSignature):])
		}
		return marker != markSOS
	})
	var err error
	if h.icc, err = chunks.profile(); err != nil {
		h.dropProfile(err)
	}
	if inks.unmarked() {
		h.warnings = append(h.warnings, warnUnmarkedInks)
	}
	// Every 8 x 8 block of the first component takes a Huffman code of a bit or more (T.81, F.1.2 and G.1.2).
	h.leastBytes = int64(h.width) * int64(h.height) / (64 * 8)
	return nil
}

// jpegDecoding is the bytes that decoding a frame of so many pixels takes: its planes, of a progressive one four bytes
// more for every coefficient, and of any but grey and YCbCr the picture that is made of them.
func jpegDecoding(marker byte, frame []byte, px int64) int64 {
	const start, each = 6, 3 // components follow, of three bytes: T.81, B.2.2
	if len(frame) < start || len(frame) < start+each*int(frame[5]) {
		return 0 // which the decoder refuses
	}
	var samples, most int64
	for i := range int(frame[5]) {
		area := int64(frame[start+each*i+1]>>4) * int64(frame[start+each*i+1]&15)
		samples, most = samples+area, max(most, area)
	}
	if frame[5] == 1 || most == 0 {
		samples, most = 1, 1 // a component alone is never subsampled: A.2.2
	}
	decoding := px * samples / most
	if marker == markSOF2 {
		decoding += 4 * decoding
	}
	if frame[5] > 1 {
		decoding += px / 16 // planes are padded to whole blocks
	}
	if frame[5] == inks {
		decoding += 4 * px
	}
	return decoding
}

// maxScans bounds a progressive JPEG's scans. Each walks the whole picture however short it is, so a small
// file could keep the decoder busy for hours. Ten or so are usual; 500 is where libjpeg-turbo's own fuzzers
// stop (recalled, not looked up).
const maxScans = 500

func decodeJPEG(data []byte) (image.Image, error) {
	scans := 0
	var inks inksMarks
	walkJPEG(bytes.NewReader(data), func(marker byte, body []byte) bool {
		inks.see(marker, body)
		if marker == markSOS {
			scans++
		}
		return scans <= maxScans
	})
	if scans > maxScans {
		return nil, fmt.Errorf("it has more than %d scans", maxScans)
	}
	if inks.unmarked() {
		return jpeg.Decode(io.MultiReader(strings.NewReader(adobeStart), bytes.NewReader(data[2:])))
	}
	return jpeg.Decode(bytes.NewReader(data))
}

// inksMarks gathers what a JPEG file says of its inks.
type inksMarks struct {
	components int
	adobe      bool
}

func (m *inksMarks) see(marker byte, body []byte) {
	switch {
	case marker >= markSOF0 && marker <= markSOF2 && len(body) > 5:
		m.components = int(body[5]) // T.81, B.2.2
	case marker == markAPP14 && len(body) >= 12 && bytes.HasPrefix(body, []byte("Adobe")):
		m.adobe = true
	}
}

// unmarked tells whether there are four components and nothing says how they are stored.
func (m *inksMarks) unmarked() bool { return m.components == 4 && !m.adobe }

// adobeStart stands in for the start of a file of four components that lacks Adobe's marker, which the
// decoder insists on: it says CMYK, stored inverted (255 is no ink). Other readers take such files so (vips
// 8.14.1 and ImageMagick 6.9.11, tried; browsers by LadybirdBrowser/ladybird pull request 6486).
const adobeStart = "\xff\xd8\xff\xee\x00\x0eAdobe\x00\x64\x00\x00\x00\x00\x00"
