package job

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/job/place"
)

// eachNumber calls do with every number in a JSON value, of lists the first two, by the names that lead to it; set puts
// another value in its place.
func eachNumber(names string, value any, set func(any), do func(names string, is float64, set func(any))) {
	switch v := value.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(v)) {
			eachNumber(names+"."+name, v[name], func(other any) { v[name] = other }, do)
		}
	case []any:
		for i := range v[:min(len(v), 2)] {
			eachNumber(fmt.Sprintf("%s[%d]", names, i), v[i], func(other any) { v[i] = other }, do)
		}
	case float64:
		do(names, v, set)
	}
}

// TestEveryFigureOfAJobSpoilt: each number of a job file in turn is turned round, made nothing, endless or next to
// nothing. The file is refused, or all that follows from its plan (told of some: it takes its time) are numbers, and
// no size or share of them is below nothing or beyond all bounds.
func TestEveryFigureOfAJobSpoilt(t *testing.T) {
	const figuresEvery = 19
	o := order(t, filmed)
	_, err := Make(t.Context(), o, Watch{})
	require.NoError(t, err)
	file, err := os.ReadFile(filepath.Join(o.Folder, place.JobFile))
	require.NoError(t, err)
	var tree any
	require.NoError(t, json.Unmarshal(file, &tree))
	tried, taken := 0, 0
	eachNumber("", tree, nil, func(names string, was float64, set func(any)) {
		for _, v := range []float64{-was, 0, 1e308, 5e-324} {
			set(v)
			text, err := json.Marshal(tree)
			require.NoError(t, err)
			tried++
			if j, err := decode(text); err == nil {
				taken++
				if taken%figuresEvery == 0 {
					requireNoneBelowNothing(t, j.Plan, fmt.Sprintf("%s %g", names, v))
				}
			}
		}
		set(was)
	})
	t.Logf("%d tried, %d taken", tried, taken)
	require.Greater(t, taken, tried/20, "some are harmless")
	require.Greater(t, tried-taken, tried/4)
}

// requireNoneBelowNothing checks that a plan's figures are numbers, and those that are no places of an axis neither
// below nothing nor beyond all bounds.
func requireNoneBelowNothing(t *testing.T, p layout.Plan, what string) {
	t.Helper()
	text, err := json.Marshal(report.Of(p).Figures(Version))
	require.NoError(t, err, what)
	var figures any
	require.NoError(t, json.Unmarshal(text, &figures))
	eachNumber("", figures, nil, func(names string, is float64, _ func(any)) {
		for _, signed := range []string{".x", ".y", ".x_share", ".y_share", "_stops"} { // places, and more or less
			if strings.HasSuffix(names, signed) {
				return
			}
		}
		if strings.HasSuffix(names, "_mm") {
			require.LessOrEqual(t, is, 1e6*units.MaxLengthMM, "%s: %s", what, names)
		}
		require.GreaterOrEqual(t, is, 0.0, "%s: %s", what, names)
	})
}
