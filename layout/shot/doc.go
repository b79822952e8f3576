// Package shot works out what the camera gets of a plan: how much of the board it sees and where the drop may be, how
// sharp, how fine and how evenly lit the picture comes out, and what of the lamps is in the way. It makes no plan of
// its own but for remedies, which it asks layout for.
//
// Frames: those of package layout. A frame's pixels are counted as layout.Camera.At does.
package shot
