// Package motion says how drops come about, fall and wobble. It knows no optics.
//
// Speeds count downward: a drop that rises on a jet has one below zero. The drop is told by its speed as its
// centre passes the middle of what the camera sees. Lengths are millimetres, times seconds.
package motion
