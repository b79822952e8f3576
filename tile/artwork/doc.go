// Package artwork reads a picture file into memory in compact form: grey as grey, JPEG planes as decoded, all
// else as opaque RGB. It knows no paper, and it turns nothing: how the stored pixels must be laid to stand
// upright is told beside them.
//
// Frame: stored pixels. The origin is the corner of the stored picture's first pixel, x right along a stored
// row, y down. Picture.Upright maps the upright picture's pixels back to stored ones (see flip.Turn). Samples
// are 8 bit, 0 to 255; YCbCr planes are full range (ITU-T T.871, clause 7, recalled from memory), whatever
// file they come from.
package artwork
