package printers

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

func printerNamed(name string) layout.Printer {
	return layout.Printer{
		Name: name, Paper: layout.Paper{Name: "A4", WidthMM: 210, HeightMM: 297}, AcrossScale: 199.3 / 200,
		FeedScale: 248.7 / 250,
		Margins:   layout.Margins{LeftMM: 3.5, TopMM: 4, RightMM: 3.5, BottomMM: 12.7},
	}
}

// What is kept comes back to the last bit, in order of the names whatever the order of keeping, and the file
// does not depend on that order.
func TestPrintersComeBack(t *testing.T) {
	var files [2][]byte
	for i, names := range [][]string{{"study", "attic", "Übungsraum"}, {"Übungsraum", "study", "attic"}} {
		path := filepath.Join(t.TempDir(), "new", "printers.json")
		for _, name := range names {
			_, err := Keep(t.Context(), path, name, false, func(*layout.Printer) (layout.Printer, bool, error) {
				return printerNamed(name), false, nil
			})
			require.NoError(t, err)
		}
		printers, err := Read(path)
		require.NoError(t, err)
		require.Equal(t, []layout.Printer{printerNamed("attic"), printerNamed("study"), printerNamed("Übungsraum")},
			printers)
		files[i], err = os.ReadFile(path)
		require.NoError(t, err)
	}
	require.Equal(t, files[0], files[1])
}
