package main

import (
	"bytes"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// What stands on a line of indented JSON: a name before its value, and a number with a point or an exponent.
var (
	namedValue = regexp.MustCompile(`^"([A-Za-z0-9_]+)": (.*)$`)
	fraction   = regexp.MustCompile(`^(-?[0-9]+(?:\.[0-9]+(?:e[+-]?[0-9]+)?|e[+-]?[0-9]+))(,?)$`)
)

// toNanometres rounds the lengths in indented JSON to the nanometre: those under a name that says that it is in
// millimetres. What binary fractions add beyond that is of no use to anyone.
func toNanometres(text []byte) []byte {
	const perNM = 1e6
	var out bytes.Buffer
	lengths := []bool{false} // whether what is inside of each bracket is lengths
	for line := range bytes.Lines(text) {
		value := strings.TrimSpace(string(line))
		isLength := lengths[len(lengths)-1]
		if m := namedValue.FindStringSubmatch(value); m != nil {
			isLength, value = isLength || strings.Contains(m[1], "_mm"), m[2]
		}
		switch {
		case strings.HasSuffix(value, "{"), strings.HasSuffix(value, "["):
			lengths = append(lengths, isLength)
		case strings.HasPrefix(value, "}"), strings.HasPrefix(value, "]"):
			lengths = lengths[:max(1, len(lengths)-1)]
		}
		m := fraction.FindStringSubmatch(value)
		if !isLength || m == nil {
			out.Write(line)
			continue
		}
		mm, err := strconv.ParseFloat(m[1], 64)
		short := strconv.FormatFloat(math.Round(mm*perNM)/perNM, 'f', -1, 64)
		if err != nil || short == "-0" {
			short = "0"
		}
		out.Write(bytes.Replace(line, []byte(value), []byte(short+m[2]), 1))
	}
	return out.Bytes()
}
