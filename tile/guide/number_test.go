package guide

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout/report"
)

func TestNumbers(t *testing.T) {
	for _, c := range []struct{ name, got, want string }{
		{"tenth", tenth(177.84), "177.8"},
		{"tenth of a whole", tenth(5), "5.0"},
		{"no minus zero", tenth(-0.04), "0.0"},
		{"length", length(889.23), "889.2\u00a0mm"},
		{"whole length", length(400), "400\u00a0mm"},
		{"long", length(2350.04), "2350\u00a0mm"},
		{"far", set(report.Far(2093.44)), "2093.4\u00a0mm (2.09\u00a0m)"},
		{"not so far", set(report.Far(1999.9)), "1999.9\u00a0mm"},
		{"size", set(report.Size(889.23, 592.8)), "889.2\u00a0×\u00a0592.8\u00a0mm"},
		{"percent", amount(report.Share(0.0675)), "6.8\u00a0%"},
		{"short keeps what counts", amount(report.Number(1.3330, 4)), "1.333"},
		{"short does not eat tens", amount(report.Number(100, 1)), "100"},
		{"one", count(1, "sheet", "sheets"), "1\u00a0sheet"},
		{"many", count(15, "sheet", "sheets"), "15\u00a0sheets"},
		{"below zero", amount(report.Number(-2, 1)), "\u20132"},
	} {
		require.Equal(t, c.want, c.got, c.name)
	}
}
