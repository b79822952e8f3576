package guide

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// noBreak keeps a number and its unit on one line.
const noBreak = "\u00a0"

// tenth writes a length for tables: millimetres with one decimal, the unit left to the heading.
func tenth(mm float64) string {
	return strconv.FormatFloat(math.Round(mm*10)/10+0, 'f', 1, 64) // + 0 turns a minus zero into zero
}

// length writes a length for running text, in millimetres to a tenth, however long: that is what one builds by.
func length(mm float64) string { return short(mm, 1) + noBreak + "mm" }

// far writes a length that may be long, with the metres beside the millimetres from two metres on.
func far(mm float64) string {
	if mm < 2000 {
		return length(mm)
	}
	return length(mm) + " (" + strconv.FormatFloat(mm/1000, 'f', 2, 64) + noBreak + "m)"
}

// size writes a width and a height.
func size(widthMM, heightMM float64) string {
	return short(widthMM, 1) + noBreak + "\u00d7" + noBreak + short(heightMM, 1) + noBreak + "mm"
}

// whole writes a length in whole millimetres.
func whole(mm float64) string { return fmt.Sprintf("%.0f%smm", mm, noBreak) }

// short writes a number with at most so many decimals, and none that are zero.
func short(v float64, decimals int) string {
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// percent writes a share of 1.
func percent(share float64) string { return short(share*100, 1) + noBreak + "%" }

// count writes how many of a thing there are.
func count(n int, one, many string) string {
	if n == 1 {
		return "1" + noBreak + one
	}
	return fmt.Sprintf("%d%s%s", n, noBreak, many)
}
