package report

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// Unit is what a figure counts, as it is written behind the number.
type Unit string

// The units of figures.
const (
	Bare    Unit = ""       // a number of its own, such as a stop or a count in a sentence
	MM      Unit = "mm"     // millimetres
	Pixels  Unit = "pixels" // of the frame unless the words say otherwise
	Percent Unit = "%"      // of a share: the value is 0 to 1, the number 0 to 100
	Degrees Unit = "\u00b0" // of a turn: it stands close behind the number
	Stops   Unit = "stops"  // one is half the light or twice
	Frames  Unit = "frames" // of the camera, or of a film
	pulses  Unit = "pulses" // of lamps on the mains
)

// many are those that lose their last letter behind a 1.
var many = []Unit{Pixels, Stops, Frames, pulses}

// Figure is a number with its unit and how exactly it is told. Everybody who tells it writes Number.
type Figure struct {
	// Path is where JSON has it: names and indexes with points between, such as "picture.reach_mm". It is
	// empty for what JSON does not hold, such as a difference of two figures.
	Path     string
	Value    float64
	Unit     Unit
	Decimals int // at most so many after the point, zeros at the end left out; -1 is tens, -2 hundreds
	// prefix stands before the number: "f/", "+".
	prefix string
	rounds rounding
	// keepZeros leaves zeros at the end in.
	keepZeros bool
	// fraction writes one over the number, such as 1/25000: Decimals and rounds are those of what stands below.
	fraction bool
	// grouped parts thousands by commas.
	grouped bool
	// number is what is written where the rounded value is not: a stop's mark.
	number string
}

// rounding is which way the last place goes.
type rounding int

const (
	nearest rounding = iota
	up               // less would not do
	down             // more would not do
)

func (r rounding) to(v float64, decimals int) float64 {
	const slip = 1e-5 // of a place: a figure that is whole but for rounding stays what it is
	places := math.Pow10(decimals)
	switch {
	case r == up:
		return math.Ceil(v*places-slip) / places
	case r == down:
		return math.Floor(v*places+slip) / places
	case decimals < 0:
		return math.Round(v*places) / places
	}
	return v
}

// Number is the figure without its unit.
func (f Figure) Number() string {
	if f.number != "" {
		return f.number
	}
	v := f.Value
	if f.Unit == Percent {
		v *= 100
	}
	if f.fraction {
		return "1/" + short(f.rounds.to(1/v, f.Decimals), f.Decimals)
	}
	v = f.rounds.to(v, f.Decimals)
	if f.grouped {
		return grouped(short(v, f.Decimals))
	}
	if f.keepZeros {
		if short(v, f.Decimals) == "0" {
			v = 0 // not minus zero
		}
		return f.prefix + strconv.FormatFloat(v, 'f', f.Decimals, 64)
	}
	return f.prefix + short(v, f.Decimals)
}

// String is the figure with its unit, "13.3 mm".
func (f Figure) String() string {
	unit := f.Unit
	if f.Number() == "1" && slices.Contains(many, unit) {
		unit = Unit(strings.TrimSuffix(string(unit), "s"))
	}
	switch unit {
	case Bare:
		return f.Number()
	case Degrees:
		return f.Number() + string(unit)
	}
	return f.Number() + " " + string(unit)
}

// Text is the figure by itself.
func (f Figure) Text() Text { return say("%s", f) }

// bare is the figure without its unit, which stands elsewhere.
func (f Figure) bare() Figure {
	f.Unit = Bare
	return f
}

// Column is the figure as tables have it: without a unit, and with all its decimals, so that points stand
// below one another.
func (f Figure) Column() Figure {
	f.Unit, f.keepZeros = Bare, true
	return f
}

// short writes a number with at most so many decimals, no zero at their end, and no minus before a zero.
func short(v float64, decimals int) string {
	text := strconv.FormatFloat(v, 'f', max(0, decimals), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// grouped parts the thousands of a number of 0 or more, from 10,000 on.
func grouped(number string) string {
	whole, rest, _ := strings.Cut(number, ".")
	if len(whole) < 5 {
		return number
	}
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if rest != "" {
		whole += "." + rest
	}
	return whole
}

// length is a length to a tenth of a millimetre, which is what one builds by.
func length(path string, mm float64) Figure {
	return Figure{Path: path, Value: mm, Unit: MM, Decimals: 1}
}

// share is a share of 1, told in per cent to a tenth.
func share(path string, of1 float64) Figure {
	return Figure{Path: path, Value: of1, Unit: Percent, Decimals: 1}
}

// fill is a share of the drop's radius that the picture takes up. It is below 1, and never told as all.
func fill(path string, of1 float64) Figure {
	f := share(path, of1)
	for f.Number() == "100" && f.Decimals < 9 && of1 < 1 {
		f.Decimals++
	}
	return f
}

// smallShare is a share that may be far less than a tenth of a per cent, and is not nothing for that: it keeps
// two figures then.
func smallShare(path string, of1 float64) Figure {
	if of1 > 0 && of1 < 0.001 {
		f := significant(path, 100*of1, Percent, 2)
		f.Value = of1
		return f
	}
	return share(path, of1)
}

// blur is a length in the frame: a tenth of a pixel counts below a hundred.
func blur(path string, px float64) Figure {
	f := Figure{Path: path, Value: px, Unit: Pixels, Decimals: 1}
	if px >= 99.95 {
		f.Decimals = 0
	}
	return f
}

// whole is a figure told without decimals.
func whole(path string, v float64, unit Unit) Figure { return Figure{Path: path, Value: v, Unit: unit} }

// significant is a number to so many figures, whatever its size; whole numbers keep all of theirs.
func significant(path string, v float64, unit Unit, figures int) Figure {
	f := rounded(path, v, unit, figures)
	f.Decimals = max(0, f.Decimals)
	return f
}

// rounded is a number to so many figures, whatever its size.
func rounded(path string, v float64, unit Unit, figures int) Figure {
	f := Figure{Path: path, Value: v, Unit: unit}
	if v != 0 {
		f.Decimals = figures - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	}
	return f
}

// enough is a length of which less would not do: whole millimetres from 20 on, tenths below.
func enough(path string, mm float64) Figure {
	f := length(path, mm)
	f.rounds = up
	if mm >= 20 {
		f.Decimals = 0
	}
	return f
}

// atMost is a length of which more would not do, to a tenth.
func atMost(path string, mm float64) Figure {
	f := length(path, mm)
	f.rounds = down
	return f
}

// OneSided tells whether the last place is rounded up or down on purpose, since less or more would not do.
func (f Figure) OneSided() bool { return f.rounds != nearest }
