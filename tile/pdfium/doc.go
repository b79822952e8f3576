// Package pdfium starts PDFium, a reader of PDF files compiled to WebAssembly, in a room without doors: it sees no
// file, no network and no clock, and takes no more memory and time than it is given.
package pdfium
