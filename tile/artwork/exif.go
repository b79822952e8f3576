package artwork

import "dropsheet/flip"

const tagOrientation = 274 // TIFF 6.0, page 36; CIPA DC-008, 4.6.4 A; clauses in this file are recalled from memory

// uprights maps the orientation tag to the turn that makes the picture stand upright. The tag says where on
// the upright picture the stored row 0 and the stored column 0 lie (TIFF 6.0, page 36): 6, say, has row 0 on
// the right and column 0 at the top.
var uprights = [...]flip.Turn{
	1: {},                                             // row 0 at the top, column 0 on the left
	2: {ReverseX: true},                               // top, right
	3: {ReverseX: true, ReverseY: true},               // bottom, right
	4: {ReverseY: true},                               // bottom, left
	5: {SwapXY: true},                                 // left, top
	6: {SwapXY: true, ReverseY: true},                 // right, top
	7: {SwapXY: true, ReverseX: true, ReverseY: true}, // right, bottom
	8: {SwapXY: true, ReverseX: true},                 // left, bottom
}

// upright returns the turn that a directory's orientation asks for; none for a value that the standard reserves.
func (d directory) upright() flip.Turn {
	v := d.number(tagOrientation, 1)
	if v < 1 || v >= int64(len(uprights)) {
		v = 1
	}
	return uprights[v]
}

// exifUpright returns the turn that an EXIF block asks for. A damaged block asks for none: the picture is
// there all the same. Some writers keep the six bytes that introduce the block in JPEG where it has no need
// of them.
func exifUpright(block source) flip.Turn {
	if start, err := block.bytes(0, 6); err == nil && string(start) == exifSignature {
		block = block.part(6, block.size)
	}
	d, err := readDirectory(block)
	if err != nil {
		return flip.Turn{}
	}
	return d.upright()
}

const exifSignature = "Exif\x00\x00" // CIPA DC-008, 4.7.2
