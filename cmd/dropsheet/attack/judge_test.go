package attack

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
)

// ran is what a run of the program came to.
type ran struct {
	args           []string
	stdout, stderr string
	code           int // -1 when it was killed
	hangs          bool
	bytes          int64 // of memory at most
}

// mostBytes is what the program may take by default (--max-memory), with nothing but small artworks to read.
const mostBytes = 1e9

var (
	noFigure = regexp.MustCompile(`\b(NaN|[Nn]aN|Inf)\b|[+-]Inf|∞`)
	negative = regexp.MustCompile(`(^|[^-\d.\w])-\d[\d.]*x\d|\dx-\d`) // a size such as -3x4mm
)

// quoted are the user's own words in an error.
var quoted = regexp.MustCompile(`"[^"]*"`)

// remedy is what an error tells to do.
var remedy = regexp.MustCompile(`(?i)\b(hint|takes?|writes?|gives?|given|name|says?|choose|use|must|leave|makes?|add|` +
	`allows?|ask|move|try|needs?|wait|free|put|measure|raise|lower|brings?|keep|read|at most|at least|wants|remove|` +
	`widen|see|replaces?|copy|open|save|--[a-z-]+)\b`)

// wrong says what is wrong with a run; empty when nothing is.
func (a ran) wrong() string {
	told := a.stdout + quoted.ReplaceAllString(a.stderr, "…")
	switch {
	case a.hangs:
		return "it hangs"
	case a.code < 0 || a.code > 2:
		return fmt.Sprintf("it ends with %d, which no help tells", a.code)
	case strings.Contains(a.stderr, "panic") || strings.Contains(a.stderr, "goroutine "):
		return "it panics"
	case a.bytes > mostBytes:
		return fmt.Sprintf("it takes %d MB", a.bytes/1e6)
	case noFigure.MatchString(told):
		return fmt.Sprintf("it tells %q", noFigure.FindString(told))
	case negative.MatchString(told):
		return fmt.Sprintf("it tells a negative size, %q", negative.FindString(told))
	case a.code == 0 && a.stdout == "":
		return "it is done and tells nothing"
	case a.code != 0 && !strings.Contains(a.stderr, "dropsheet: "):
		return "it fails and does not say why"
	case a.code != 0 && !remedy.MatchString(strings.TrimPrefix(lastLines(a.stderr), "dropsheet: ")):
		return "its error does not say what to do"
	}
	if slices.Contains(a.args, "--json") && a.code == 0 {
		var tree any
		if err := json.Unmarshal([]byte(a.stdout), &tree); err != nil {
			return fmt.Sprintf("its JSON can't be read: %v", err)
		}
		return wrongFigure("", tree)
	}
	return ""
}

// lastLines are an error with its hint, without the warnings before.
func lastLines(stderr string) string {
	if at := strings.LastIndex(stderr, "dropsheet: "); at >= 0 {
		return stderr[at:]
	}
	return stderr
}

// sizes are the ends of names in JSON whose figures are never below 0.
var sizes = regexp.MustCompile(`(^|_)(width|height|diameter|radius|length|print|reach|blur|dpi|ppi|iso|lux)(_|$)`)

// wrongFigure looks for figures in JSON that can't be.
func wrongFigure(name string, tree any) string {
	switch v := tree.(type) {
	case map[string]any:
		for key, under := range v {
			if said := wrongFigure(key, under); said != "" {
				return said
			}
		}
	case []any:
		for _, under := range v {
			if said := wrongFigure(name, under); said != "" {
				return said
			}
		}
	case float64:
		if math.IsInf(v, 0) || math.Abs(v) > 1e300 {
			return fmt.Sprintf("%s is %g", name, v)
		}
		if v < 0 && sizes.MatchString(name) {
			return fmt.Sprintf("%s is below 0: %g", name, v)
		}
	}
	return ""
}
