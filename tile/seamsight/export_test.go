package seamsight

// What the tests outside the package look at.
const (
	Flare     = flare
	ShowsFrom = showsFrom
	WindowPx  = windowPx
)

var (
	Threshold = threshold
	VerdictOf = verdict
)
