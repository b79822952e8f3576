package units

import "strconv"

// Nanometres is a length in mm rounded to a whole number of nanometres: the float nearest to the six decimals.
func Nanometres(mm float64) float64 {
	const decimals = 6
	v, err := strconv.ParseFloat(strconv.FormatFloat(mm, 'f', decimals, 64), 64)
	if err != nil {
		return mm // not a number, or none that is finite
	}
	return v
}
