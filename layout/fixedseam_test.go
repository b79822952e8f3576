package layout

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParseFixedSeam(t *testing.T) {
	for text, want := range map[string]FixedSeam{
		"C2=355mm": {ColumnSeam, 2, 355}, " r1 = 20cm": {RowSeam, 1, 200}, "C12=1.5m": {ColumnSeam, 12, 1500},
	} {
		got, err := ParseFixedSeam(text)
		require.NoError(t, err, text)
		require.Equal(t, want, got, text)
	}
	for text, says := range map[string]string{
		"": "write C2=355mm", "C2": "write C2=355mm", "X2=3mm": "write C2=355mm", "C=3mm": "write C2=355mm",
		"C0=3mm": "write C2=355mm", "C-1=3mm": "write C2=355mm", "C+1=3mm": "write C2=355mm", "C2=355": "has no unit",
		"C2=0mm": "above 0mm", "C2=-1mm": "above 0mm", "C2=9e9mm": "too long",
	} {
		_, err := ParseFixedSeam(text)
		require.ErrorContains(t, err, says, text)
	}
}

// A fixed seam lies where it was put, whatever the others cost; those keep to what sheets can show.
func TestFixedSeams(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	even, err := s.Plan()
	require.NoError(t, err)
	b := even.Backdrop
	require.Greater(t, b.Columns, 3)
	require.Greater(t, b.Rows, 2)
	atMM := b.XEdgesMM[2] + 7.3
	placed, err := even.WithSeams(NoSeamCosts(b), nil, FixedSeam{ColumnSeam, 2, atMM})
	require.NoError(t, err)
	require.NoError(t, placed.Plan.Check())
	require.Equal(t, atMM, placed.Plan.Backdrop.XEdgesMM[2])
	require.Equal(t, b.YEdgesMM, placed.Plan.Backdrop.YEdgesMM)
	require.InDelta(t, 7.3, placed.MovedMM, 1e-9)
	dear := NoSeamCosts(b)
	for i := range dear.Down {
		dear.Down[i] = 5
	}
	placed, err = even.WithSeams(dear, []Circle{{Point{atMM, b.HeightMM / 2}, 20}}, FixedSeam{ColumnSeam, 2, atMM})
	require.NoError(t, err)
	require.Equal(t, atMM, placed.Plan.Backdrop.XEdgesMM[2], "a place to avoid does not move it")

	for name, fixed := range map[string][]FixedSeam{
		"narrower than can be cut": {{ColumnSeam, 1, 12}},
		"wider than a sheet shows": {{ColumnSeam, 1, 230}},
		"two out of order":         {{ColumnSeam, 1, 180}, {ColumnSeam, 2, 175}},
		"past the board":           {{ColumnSeam, 1, 5000}},
	} {
		_, err = even.WithSeams(NoSeamCosts(b), nil, fixed...)
		require.ErrorContains(t, err, "by itself each may lie: C1 from", name)
	}
	_, err = even.WithSeams(NoSeamCosts(b), nil, FixedSeam{RowSeam, b.Rows, 100})
	require.ErrorContains(t, err, "there is no seam R")
	for n, says := range map[int]string{
		1: "there is no seam C7: the board has 1 column\nhint: leave --seam-at C7 out",
		2: "there is no seam C7: the board has 2 columns\nhint: give C1, which lies between them",
		7: "there is no seam C7: the board has 7 columns\nhint: give one from C1 to C6",
	} {
		require.EqualError(t, noSeam(FixedSeam{ColumnSeam, 7, 100}, n), says)
	}
}
