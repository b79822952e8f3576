package layout

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"dropsheet/flip/units"
)

// Paper is a paper size, upright: the width is the shorter side.
type Paper struct {
	Name     string  `json:"name"`
	WidthMM  float64 `json:"width_mm"`
	HeightMM float64 `json:"height_mm"`
}

// series starts a family of sizes, each the one before cut in half across its longer side and rounded down to
// the millimetre.
var series = []struct {
	prefix            string
	widthMM, heightMM float64
}{
	{"A", 841, 1189},      // ISO 216:2007: A0 has one square metre and sides in the ratio 1 to √2
	{"B", 1000, 1414},     // ISO 216:2007: B0 has a side of one metre
	{"JIS-B", 1030, 1456}, // JIS P 0138: B0 has one and a half times the area of A0
}

// smallest is the last number in each series that the standards list.
const smallest = 10

// inchPaper is a paper by its size in inches.
type inchPaper struct {
	name              string
	widthIn, heightIn float64
}

// inchPapers are the sizes named in North America (ANSI/ASME Y14.1 for A and B), in inches, and the
// photographers' sheet of 13 by 19.
var inchPapers = []inchPaper{
	{"letter", 8.5, 11},
	{"legal", 8.5, 14},
	{"tabloid", 11, 17},
	{"13x19in", 13, 19},
}

// PapersTaken names the papers for messages and help.
const PapersTaken = "A0 to A10, B0 to B10, JIS-B0 to JIS-B10, letter, legal, tabloid, 13x19in, or any size such as " +
	"300x400mm or 4x6in"

// Limits of a paper given by its size: what a desk printer feeds at the small end, and a wide roll at the other.
const (
	minPaperMM = 50
	maxPaperMM = 5000
)

// ParsePaper reads a paper's name, in either case, or a size such as 300x400mm.
func ParsePaper(s string) (Paper, error) {
	name := strings.TrimSpace(s)
	for _, p := range inchPapers {
		if strings.EqualFold(name, p.name) {
			return Paper{p.name, p.widthIn * units.MMPerInch, p.heightIn * units.MMPerInch}, nil
		}
	}
	for _, family := range series {
		w, h := family.widthMM, family.heightMM
		for n := range smallest + 1 {
			full := fmt.Sprintf("%s%d", family.prefix, n)
			if strings.EqualFold(name, full) {
				return Paper{full, w, h}, nil
			}
			w, h = math.Floor(h/2), w
		}
	}
	w, h, err := units.ParseSize(name)
	if err != nil {
		return Paper{}, fmt.Errorf("%q is not a paper\nhint: %s", s, paperMeant(name))
	}
	if min(w, h) < minPaperMM || max(w, h) > maxPaperMM {
		return Paper{}, fmt.Errorf("%q is not a paper that can be printed on\n"+
			"hint: take one whose sides measure %dmm to %dmm", s,
			minPaperMM, maxPaperMM)
	}
	p := Paper{fmt.Sprintf("%gx%gmm", min(w, h), max(w, h)), min(w, h), max(w, h)}
	if givenInInches(name) {
		p.Name = fmt.Sprintf("%gx%gin", inInches(p.WidthMM), inInches(p.HeightMM))
	}
	return p, nil
}

// paperMeant says what to write for what is no paper: of two numbers without a unit, which they may be.
func paperMeant(name string) string {
	const mostIn = 60 // wider than any printer; narrower than any paper in millimetres
	left, right, ok := units.CutSides(name)
	w, errW := strconv.ParseFloat(strings.TrimSpace(left), 64)
	h, errH := strconv.ParseFloat(strings.TrimSpace(right), 64)
	switch {
	case !ok || errW != nil || errH != nil || !(w > 0 && h > 0):
		return "take " + PapersTaken
	case max(w, h) < mostIn:
		return fmt.Sprintf("write %gx%gin for inches, or %[1]gx%gcm", w, h)
	}
	return fmt.Sprintf("write %gx%gmm", w, h)
}

// givenInInches tells whether a size has its sides in inches: 4x6in, 4inx6in or 4x6".
func givenInInches(size string) bool {
	size = strings.ToLower(size)
	return (strings.HasSuffix(size, "in") || strings.HasSuffix(size, `"`)) && !strings.ContainsAny(size, "mc")
}

// inInches is a length in inches, without what its way through millimetres adds.
func inInches(mm float64) float64 { return math.Round(mm/units.MMPerInch*1e9) / 1e9 }

// InInches tells whether the paper is named in inches, as it is in North America.
func (p Paper) InInches() bool {
	return strings.HasSuffix(p.Name, "in") ||
		slices.ContainsFunc(inchPapers, func(q inchPaper) bool { return q.name == p.Name })
}
