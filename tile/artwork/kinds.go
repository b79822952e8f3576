package artwork

import "fmt"

// refusal says what kind a file is of a format that is read, which kind is not, and what to do.
func refusal(kind, do string) error {
	return fmt.Errorf("this is %s, which is not read\nhint: %s", kind, do)
}

// refuseJPEG refuses the kinds of JPEG that are not read, by their frame's marker (ITU-T T.81, table B.1, from memory)
// and its precision. The library would say no more than that it knows no such marker.
func refuseJPEG(src source) (err error) {
	walkJPEG(src.reader(), func(marker byte, body []byte) bool {
		if !isFrame(marker) {
			return marker != markSOS
		}
		const anew = "save it anew as a usual (baseline or progressive) JPEG, or as PNG"
		switch {
		case marker == markSOF0+3 || marker == markSOF0+7 || marker == markSOF0+11 || marker == markSOF0+15:
			err = refusal("a lossless JPEG", anew)
		case marker > markSOF0+8:
			err = refusal("an arithmetic-coded JPEG", anew)
		case marker > markSOF2:
			err = refusal("a hierarchical JPEG", anew)
		case len(body) > 0 && body[0] != 8: // bits a sample: B.2.2
			err = refusal(fmt.Sprintf("a JPEG of %d bits a sample", body[0]), "save it anew as a JPEG of 8 bits, or as PNG")
		}
		return false
	})
	return err
}

// isFrame tells a frame's marker from others: of this row, three are something else.
func isFrame(marker byte) bool {
	const huffmanTables, reserved, arithmeticTables = 0xc4, 0xc8, 0xcc
	return marker >= markSOF0 && marker <= markSOF0+15 &&
		marker != huffmanTables && marker != reserved && marker != arithmeticTables
}

// tiffJPEG are the compressions of TIFF that are JPEG files within it: TIFF 6.0, section 22, and the technical note 2
// that replaced it (both from memory).
var tiffJPEG = map[int64]bool{6: true, 7: true}

// refuseTIFF refuses the kinds of TIFF that are not read. The library would take one colour's plane for the whole, or
// say no more than that it does not know the colours.
func refuseTIFF(src source) error {
	d, err := readDirectory(src)
	switch {
	case err != nil:
		return nil // the decoder says what is wrong
	case tiffJPEG[d.number(tagCompression, 1)]:
		return refusal("a TIFF compressed as JPEG", "save it with LZW or deflate, or as JPEG")
	case d.number(tagPlanar, 1) != 1:
		return refusal("a TIFF that stores each colour apart (planar, per channel)", "save it interleaved (per pixel)")
	}
	return nil
}
