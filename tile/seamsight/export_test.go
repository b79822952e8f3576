package seamsight

// What the tests outside the package look at.
const (
	Flare = flare
	Cells = cells
)

var (
	Threshold = threshold
	VerdictOf = verdict
)
