package printers

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// FuzzDecode: whatever the text, an error or printers that a job can be made for.
func FuzzDecode(f *testing.F) {
	whole, err := json.Marshal(stored{formatVersion, []layout.Printer{printerNamed("study"), printerNamed("attic")}})
	require.NoError(f, err)
	_, err = decode(whole)
	require.NoError(f, err)
	for _, text := range [][]byte{whole, whole[:len(whole)/2], []byte(`{"dropsheet_printers":1}`), []byte(`[]`), nil} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		printers, err := decode(text)
		if err != nil {
			require.Nil(t, printers)
			return
		}
		for _, p := range printers {
			for _, v := range []float64{p.AcrossScale, p.FeedScale, p.Paper.WidthMM, p.Paper.HeightMM} {
				require.True(t, v > 0 && !math.IsInf(v, 0), "%s", text)
			}
			for _, v := range []float64{p.Margins.LeftMM, p.Margins.TopMM, p.Margins.RightMM, p.Margins.BottomMM} {
				require.True(t, v >= 0 && !math.IsInf(v, 0), "%s", text)
			}
		}
	})
}
