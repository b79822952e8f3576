// Package sheet draws the sheets: one page each, with its cell, laps and bleed of picture, and the marks that
// cutting and pasting need.
//
// Frame: page millimetres, origin at the page's top-left corner, x right, y down. A page stands as its sheet
// hangs: up is board-up. No mark lies inside a cell. What is printed on a lap lies just past the seam, so
// that the neighbour pasted over it hides it.
package sheet
