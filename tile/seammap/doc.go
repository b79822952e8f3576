// Package seammap draws where the seams fall: on the backdrop, and as the drop bends them.
//
// Frames. Board millimetres, as package layout has them: origin at the board's top-left corner, x right, y down.
// Map pixels: origin at the map's top-left corner, x right, y down, whole numbers at pixel corners.
// Drop millimetres: the optical x and y of package flip, in the plane through the drop's centre.
package seammap
