package ask

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

func TestFindPrinter(t *testing.T) {
	_, err := findPrinter(nil, "study")
	require.ErrorContains(t, err, "none is kept yet")
	kept := []layout.Printer{{Name: "hall laser"}, {Name: "study inkjet"}}
	_, err = findPrinter(kept, "study")
	require.ErrorContains(t, err, `take "hall laser", "study inkjet"`)
	p, err := findPrinter(kept, " study inkjet ")
	require.NoError(t, err)
	require.Equal(t, &kept[1], p)
}
