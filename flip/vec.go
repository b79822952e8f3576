package flip

import "math"

// Vec is a point or a direction in optical millimetres (see the package comment).
type Vec struct{ X, Y, Z float64 }

// Add returns v + w.
func (v Vec) Add(w Vec) Vec { return Vec{v.X + w.X, v.Y + w.Y, v.Z + w.Z} }

// Sub returns v - w.
func (v Vec) Sub(w Vec) Vec { return Vec{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Scale returns k v.
func (v Vec) Scale(k float64) Vec { return Vec{k * v.X, k * v.Y, k * v.Z} }

// Dot returns the inner product.
func (v Vec) Dot(w Vec) float64 { return v.X*w.X + v.Y*w.Y + v.Z*w.Z }

// Unit returns v at length 1; v must not be zero.
func (v Vec) Unit() Vec { return v.Scale(1 / math.Sqrt(v.Dot(v))) }

// Ray starts at From and runs along Dir, which has length 1.
type Ray struct{ From, Dir Vec }

// At returns the point after t millimetres.
func (r Ray) At(t float64) Vec { return r.From.Add(r.Dir.Scale(t)) }
