package layout

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func names(sheets []Sheet) (all []string) {
	for _, s := range sheets {
		all = append(all, s.Name)
	}
	return all
}

func TestSelect(t *testing.T) {
	s := plain() // two columns and two rows, lamp at the top left
	p := mustPlan(t, s)
	require.Equal(t, 2, p.Backdrop.Columns)
	require.Equal(t, 2, p.Backdrop.Rows)
	for _, c := range []struct {
		name string
		ask  []string
		want []string
	}{
		{"one", []string{"R2C1"}, []string{"R2C1"}},
		{"small letters", []string{"r1c2"}, []string{"R1C2"}},
		{"in pasting order, each once", []string{"R2C2", "R1C1", "R2C2"}, []string{"R1C1", "R2C2"}},
		{"a row", []string{"R2"}, []string{"R2C1", "R2C2"}},
		{"a column", []string{"C1"}, []string{"R1C1", "R2C1"}},
		{"all", []string{"all"}, []string{"R1C1", "R1C2", "R2C1", "R2C2"}},
		{"none asked", nil, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := p.Select(c.ask)
			require.NoError(t, err)
			require.Equal(t, c.want, names(got))
		})
	}
	for _, c := range []struct{ name, ask, says string }{
		{"beyond the last row", "R3C1", "rows R1 to R2"},
		{"row 0", "R0C1", "there is no R0C1"},
		{"column beyond", "C9", "columns C1 to C2"},
		{"empty", "", "is not a sheet"},
		{"the other way round", "C1R1", "is not a sheet"},
		{"number too long", "R99999999999999999999", "is not a sheet"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := p.Select([]string{c.ask})
			require.ErrorContains(t, err, c.says)
		})
	}
}

func FuzzSelect(f *testing.F) {
	seeds := []string{"R1C1", "all", "R2", "C2", "", "R", "C", "R0", "R99C99", "r1c1 "}
	if len(seeds) == 0 {
		f.Fatal("no seeds")
	}
	for _, s := range seeds {
		f.Add(s)
	}
	p, err := plain().Plan()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, name string) {
		if chosen, err := p.Select([]string{name}); err == nil && len(chosen) == 0 {
			t.Errorf("Select(%q) chose nothing and did not say so", name)
		}
	})
}
