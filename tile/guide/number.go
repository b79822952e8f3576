package guide

import (
	"dropsheet/layout/report"
)

// noBreak keeps a number and its unit on one line.
const noBreak = "\u00a0"

// length sets a length.
func length(mm float64) string { return amount(report.Length(mm)) }

// tenth sets a length for tables, whose heading tells the unit.
func tenth(mm float64) string { return amount(report.Length(mm).Column()) }

// size sets a width and a height.
func size(widthMM, heightMM float64) string { return set(report.Size(widthMM, heightMM)) }

// count sets how many of a thing there are.
func count(n int, one, many report.Unit) string { return amount(report.Count(n, one, many)) }
