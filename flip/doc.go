// Package flip says what a drop does to a picture, and how to undo it: bodies, liquids, ray tracing, turning.
// It knows no paper.
//
// Frame: optical millimetres. The origin is the drop's centre; z runs from the camera through the drop to the
// backdrop, x right and y down as the camera sees them. The camera's entrance pupil is at z = -CameraMM, the
// backdrop's plane at z = DistanceMM. Angles are radians. A ray that meets nothing (misses, is totally
// reflected, never reaches the plane) is told by an ok that is false.
package flip
