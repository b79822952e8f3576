package report

// Fact is one thing that is told of a plan.
type Fact struct {
	// Key names it for those who lay facts out: its topic, a point, and what of it: "sharp.least".
	Key string
	// Name heads it where facts are listed; empty where it goes on with the one before.
	Name string
	Text Text
	// Asks tells that something should be done about it.
	Asks bool
}

// Table is a fact that has rows.
type Table struct {
	Heads []string
	Rows  []Row
}

// Row is a line of a table.
type Row struct {
	Cells []Text
	Own   bool // the plan's own, among others to compare it with
}
