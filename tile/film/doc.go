// Package film writes pictures as a film that browsers and ordinary players open: VP8 key frames in a WebM
// file.
//
// Every frame stands for itself, so that a player shows any of them at once. The same pictures give the same
// bytes: no clock, no random, and the encoder's arithmetic is WebAssembly's, which no processor changes. Frames
// go out as they come; what stays in memory is what one frame takes, and eight bytes for each.
//
// Sources: VP8, RFC 6386; WebM's elements, RFC 9559 (Matroska); how they are laid, RFC 8794 (EBML). Clauses are
// recalled from memory, and so are the identifiers of RFC 8794. Those of RFC 9559 were read in its working
// group's ebml_matroska.xml.
//
// Frames: pixels are those of the pictures' bounds, x right, y down, the first at Min. Colour is sRGB. The file
// holds it as luma from 16 to 235 and chroma from 16 to 240 of Rec. ITU-R BT.601, chroma at half resolution both
// ways, and says so: VP8 itself only knows "similar to BT.601" (RFC 6386, 9.2). Times in the file are
// milliseconds, positions in it bytes from the first of the segment's content.
package film
