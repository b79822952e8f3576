// Package raster makes each sheet's pixels from just the part of the artwork that it shows.
//
// Frame: the grid, one virtual raster of the whole backdrop as it hangs. Grid pixel (i, j) covers i to i+1 across and j to j+1 down, in
// grid pixels from the board's top-left corner. Every sheet is an integer rectangle of it, so that no seam shows a step.
// Beyond the board's edge the outermost pixels go on, so that a bleed shows picture.
package raster
