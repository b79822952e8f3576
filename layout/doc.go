// Package layout works out how big a backdrop is, where it stands and how it falls into sheets, in
// millimetres: a Setup becomes a Plan once, and everything after only reads the Plan. It knows no pixels of
// its own and no PDF. Of the camera it works out what a plan cannot come about without: the best focus, for which it
// traces the picture's blur, and how large a board fills the frame. What else the camera gets is in package shot.
//
// Frames. Board: origin at the backdrop's top-left corner as one faces the printed side, x right, y down.
// Page: origin at the page's top-left corner, x right, y down. Picture: 0 to 1, x right, y down, as it
// appears in the drop. Optical: see package flip; the axis meets the board at its centre, so board = optical
// + half the backdrop's size.
package layout
