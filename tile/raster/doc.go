// Package raster makes each sheet's pixels from just the part of the artwork that it shows.
//
// Frame: the grid, one virtual raster of the whole picture as it hangs. Grid pixel (i, j) covers i to i+1
// across and j to j+1 down, in grid pixels from the top-left corner of the picture on the board. Every sheet
// is an integer rectangle of it, so that no seam shows a step. Beyond the picture, pixels count on: there its
// outermost ones repeat, or the surround's colour stands, so that a bleed shows what its cell does. A bent
// picture's grid is that of the printed picture's box about the board's middle; it ends at the picture's
// outline, antialiased, and beyond stands the surround's colour or white paper.
package raster
