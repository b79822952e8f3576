package ask

// Alternatives are flags of which at most so many can be given together: each more says what the others say already.
// Those of a job that is asked for again give way to flags that are given in the order in which they stand here.
type Alternatives struct {
	Flags []string `json:"flags"`
	Most  int      `json:"most"`
}

// AllAlternatives lists those of a setup, for whoever changes one word of many: the one said longest ago gives way.
func AllAlternatives() []Alternatives {
	return []Alternatives{
		{[]string{"drop", "drops-per-ml", "nozzle", "jet"}, 1},
		{[]string{"sensor", "pixel-size"}, 1},
		{[]string{"sensor", "camera"}, 1},
		{[]string{"pixel-size", "camera"}, 1},
		{[]string{"lens", "camera"}, 1},
		{[]string{"frame-width", "camera"}, 1},
		{[]string{"fall", "speed"}, 1},
		{[]string{"margin", "printer"}, 1},
		{[]string{"surround", "background"}, 1},
		{[]string{"frame-width", "lens", "camera-distance"}, 2},
		{[]string{"print-size", "fill", "distance"}, 2},
	}
}
