package weigh

// Raised is what a row that Down has made is to be raised by so that Across rounds up from another share of a level
// than half: by the threshold of a rank from 0 to ranks - 1, from all but half a level down to half a level up.
// Levels that need no rounding stay as they are.
func Raised(rank, ranks int) int16 {
	return int16(rank<<middleBits/ranks - 1<<(middleBits-1))
}
