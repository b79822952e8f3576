// Package jpeg writes a sheet's pixels as a baseline JPEG file.
//
// It is for photographs in print: the standard library's quantisation and Huffman tables, so that a quality
// means what it means there, at more than twice the speed. All arithmetic is in integers, so that the same
// pixels give the same bytes on every processor.
//
// Clauses, annexes and tables are those of ITU-T T.81, recalled from memory. Frames: pixels are those of the
// picture's bounds, x right, y down, the first at Rect.Min. In a block, u counts frequencies across and v
// down, both from 0.
package jpeg
