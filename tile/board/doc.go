// Package board answers what a place of a plan's board shows: the picture, what surrounds it, bare paper, or
// no sheet at all. Proof, seam model, seam map and guide all ask it.
//
// Frame: board millimetres, as package layout has them: origin at the board's top-left corner as one faces the
// printed side, x right, y down. Light is linear, of the sRGB primaries; 1 is what the artwork's white sends
// back in full light.
//
// A place is asked for together with a patch about it, for no pixel and no ray sees a point. At every edge (of
// picture, sheet, seam and board) a patch counts as an even span of its own variance across that edge.
package board
