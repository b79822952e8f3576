package guide

import (
	"dropsheet/layout/report"
)

// noBreak keeps a number and its unit on one line.
const noBreak = "\u00a0"

// length sets a length that is small, or that is measured in millimetres whatever the plan asks for.
func length(mm float64) string { return amount(report.Length(mm)) }

// length sets a length, with inches beside it where the plan asks for them.
func (b *book) length(mm float64) string { return set(b.report.Beside(report.Length(mm).Text())) }

// size sets a width and a height, likewise.
func (b *book) size(widthMM, heightMM float64) string {
	return set(b.report.Beside(report.Size(widthMM, heightMM)))
}

// tenth sets a length for tables, whose heading tells the unit.
func tenth(mm float64) string { return amount(report.Length(mm).Column()) }

// count sets how many of a thing there are.
func count(n int, one, many report.Unit) string { return amount(report.Count(n, one, many)) }
