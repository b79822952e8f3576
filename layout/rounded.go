package layout

import (
	"math"
	"reflect"
	"strconv"
	"strings"

	"dropsheet/flip/units"
)

// roundedDigits is how many digits all but lengths keep: more than anybody measures, and fewer than those in which
// processors differ.
const roundedDigits = 9

// Rounded is a plan, or what else is kept in a job's file, with every length rounded to a nanometre and every other
// float to nine digits. The last digits of sines and sums differ from one kind of processor to another, where some
// multiply and add in one step; a plan that is rounded before anything is made of it is the same on all.
func Rounded[T any](v T) T { return rounded(reflect.ValueOf(v), false).Interface().(T) }

// rounded is a copy of v in which every float is rounded, as lengths where mm says that they are some or a field's name
// does.
func rounded(v reflect.Value, mm bool) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	out.Set(v)
	switch v.Kind() {
	case reflect.Float64:
		out.SetFloat(roundedTo(v.Float(), mm))
	case reflect.Struct:
		for i := range v.NumField() {
			if field := v.Type().Field(i); field.IsExported() { // no file carries the others
				out.Field(i).Set(rounded(v.Field(i), strings.HasSuffix(field.Name, "MM")))
			}
		}
		if r, ok := v.Interface().(Rect); ok { // sides that met still meet
			out.Set(reflect.ValueOf(r.rounded()))
		}
	case reflect.Slice:
		if !v.IsNil() {
			out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		}
		for i := range v.Len() {
			out.Index(i).Set(rounded(v.Index(i), mm))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			out.Set(reflect.New(v.Type().Elem()))
			out.Elem().Set(rounded(v.Elem(), mm))
		}
	}
	return out
}

// rounded rounds the sides, and not the width by itself.
func (r Rect) rounded() Rect {
	left, top := units.Nanometres(r.XMM), units.Nanometres(r.YMM)
	return Rect{left, top, units.Nanometres(units.Nanometres(r.RightMM()) - left),
		units.Nanometres(units.Nanometres(r.BottomMM()) - top)}
}

// roundedTo is a length to the nanometre, or anything else to so many digits.
func roundedTo(v float64, mm bool) float64 {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return v
	case mm:
		return units.Nanometres(v)
	}
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', roundedDigits, 64), 64)
	if err != nil {
		return v // which can't be: it was just written
	}
	return short
}
