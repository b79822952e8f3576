// Package seamsight tells how plainly each seam shows in the frame, seen directly beside the drop and through the drop.
//
// The model. A seam is a line of given width that shows the bare edge of the paper. In the frame it is as
// wide as the local scale makes it, and is blurred across by the pixel, by defocus and by diffraction
// (line.go). What is left of it at its peak is held against the light of the picture around it: its Weber
// contrast. It is seen where that passes a threshold, which the picture's own detail raises (eye.go). The
// verdicts are held against the proof, rendered with seams and without, in the tests.
//
// Frames. Board millimetres, as package layout has them. Optical millimetres of the plane through the drop's
// centre, as package flip has them. Frame pixels, as layout.Camera.At counts them. Light is linear, 1 what
// the artwork's white sends back in full light.
package seamsight
