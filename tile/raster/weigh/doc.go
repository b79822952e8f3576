// Package weigh adds up bytes by weights: the inner loops of resampling.
//
// A picture is weighed along one axis and then along the other. Levels are bytes; weights carry weightBits
// binary places and add up to One; what stands between the axes carries middleBits. All of it is integers, so
// that the pixels are the same on every processor, whichever of the two writings of a loop it runs: the one
// in Go, or the one in AVX2 that x86 processors have had since 2013 and that is several times as fast. Tests
// hold the two together bit by bit.
package weigh
