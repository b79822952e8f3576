// Package page makes pixels of a page of a PDF file. It draws what stands on the page and follows nothing: no script,
// link, form, note or attached file, and no file but the bytes that it is given.
//
// Frame: the page as a reader shows it, its crop box turned by its own rotation (ISO 32000-1, 7.7.3.3 and 14.11.2,
// recalled from memory). Pixels from the top-left corner, x right, y down, sRGB. Pages are numbered from 1.
package page
