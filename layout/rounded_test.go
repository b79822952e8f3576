package layout

import (
	"math"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
)

// TestRounded: a rounded plan holds together, is rounded once and for all, and does not care for the last digits that
// processors differ in.
func TestRounded(t *testing.T) {
	for name, change := range map[string]func(*Setup){
		"plain":    func(*Setup) {},
		"straight": func(s *Setup) { s.Look = Straight },
		"surround": func(s *Setup) { s.Surround = "#204060" },
		"levelled": func(s *Setup) { s.Lamps, s.Level = []Lamp{{XMM: 400, YMM: -300, ZMM: 900.1234567}}, true },
		"turned":   func(s *Setup) { s.Look, s.Framing.TurnDeg = 0.5, 12.3456789 },
	} {
		t.Run(name, func(t *testing.T) {
			s := plain()
			change(&s)
			p, err := s.Plan()
			require.NoError(t, err)
			once := Rounded(p)
			require.NoError(t, once.Check())
			require.Equal(t, once, Rounded(once))
			require.InDelta(t, p.Picture.ReachMM, once.Picture.ReachMM, 0.6e-6)
			nudged := nudge(reflect.ValueOf(p)).Interface().(Plan)
			require.NotEqual(t, p, nudged)
			require.Equal(t, once, Rounded(nudged))
			for i, sheet := range once.Sheets {
				require.InDelta(t, p.Sheets[i].Cell.RightMM(), sheet.Cell.RightMM(), 0.6e-6)
			}
		})
	}
	require.Equal(t, 12.345679, units.Nanometres(12.3456789))
	require.True(t, math.IsNaN(units.Nanometres(math.NaN())))
}

// nudge is a copy of v in which the last digit of every float is another.
func nudge(v reflect.Value) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	out.Set(v)
	switch v.Kind() {
	case reflect.Float64:
		if v.Float() != 0 {
			out.SetFloat(math.Nextafter(v.Float(), math.Inf(1)))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				out.Field(i).Set(nudge(v.Field(i)))
			}
		}
	case reflect.Slice:
		if !v.IsNil() {
			out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		}
		for i := range v.Len() {
			out.Index(i).Set(nudge(v.Index(i)))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			out.Set(reflect.New(v.Type().Elem()))
			out.Elem().Set(nudge(v.Elem()))
		}
	}
	return out
}
