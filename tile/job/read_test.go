package job

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// A printer that a job file brings is found out before anything is drawn.
func TestPrinterOfAJobIsChecked(t *testing.T) {
	j := jobOf(t, func(s *layout.Setup) {
		p, err := layout.NewPrinter("study inkjet", s.Paper, layout.Size{WidthMM: 200, HeightMM: 250},
			layout.Size{WidthMM: 199.2, HeightMM: 248.5}, layout.Margins{LeftMM: 4, TopMM: 4, RightMM: 4, BottomMM: 12})
		require.NoError(t, err)
		s.Printer = &p
	})
	require.NoError(t, j.holdsTogether())
	for _, c := range []struct {
		name   string
		change func(*layout.Printer)
		says   string
	}{
		{"a scale beyond reason", func(p *layout.Printer) { p.FeedScale = 0 }, "scale of 0"},
		{"margins that meet the sheets", func(p *layout.Printer) { p.Margins.LeftMM = 40 }, "does not fit its paper"},
		{"a name for a terminal", func(p *layout.Printer) { p.Name = "a\x1b[2J" }, "can't be printed"},
		{"a paper's name for a terminal", func(p *layout.Printer) { p.Paper.Name = "A4\x1b[2J" }, "can't be printed"},
	} {
		changed, printer := j, *j.Backdrop.Printer
		c.change(&printer)
		changed.Backdrop.Printer = &printer
		require.ErrorContains(t, changed.holdsTogether(), c.says, c.name)
	}
}
