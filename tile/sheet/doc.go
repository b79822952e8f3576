// Package sheet draws the sheets: one page each, with its cell, laps and bleed of picture, and the marks that
// cutting and pasting need.
//
// Frame: page millimetres, origin at the page's top-left corner, x right, y down. A page stands as its sheet
// hangs: up is board-up. No mark lies inside a cell, nor within 1.5 mm of it: what is printed on a lap starts so far
// past the seam that the neighbour hides it, though cut and pasted by hand.
package sheet
