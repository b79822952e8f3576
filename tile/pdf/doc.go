// Package pdf makes PDF files: pages drawn with one pen and one kind of type, and pictures that are streamed in
// afterwards by an incremental update (ISO 32000-1, 7.5.6; clauses recalled from memory). It alone knows gofpdf,
// which draws the pages.
//
// gofpdf holds every picture in memory until the end, can't tag a colour space or ask for unscaled printing,
// and writes page boxes in random order. So the pages are drawn with a stub in the place of each picture;
// Stream writes that file, then appends the real pictures one by one, each under the object number of its
// stub, then the pages' boxes and the catalog. Memory is the drawn pages and one picture, however many there
// are. The same calls give the same bytes: no clock, no random.
//
// Frames: page millimetres have their origin at the page's top-left corner, x right, y down. In the file they
// become points with the origin at the bottom-left corner, y up (ISO 32000-1, 8.3.2.3). A picture's first row
// of pixels is at its top.
package pdf
