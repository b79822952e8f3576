package main

import "dropsheet/examples/paint"

// capU is how high the words' capitals are, line1U and line2U where their baselines lie.
const capU, line1U, line2U = 96.0, 344.0, -440.0

func harbourOffice() paint.Shape { return paint.Text("HARBOUR OFFICE", 0, line1U, capU, 1, 2) }
func portLarken() paint.Shape    { return paint.Text("PORT LARKEN", 0, line2U, capU, 1, 14) }

// words letters the dial, each line on a clear band with round ends that keeps the grid off the letters.
func words(dial paint.Place) {
	mid1, mid2 := line1U+capU/2, line2U+capU/2
	dial.Fill(stroke(156, paint.Points(-580, mid1, 580, mid1)), glass)
	dial.Fill(stroke(156, paint.Points(-500, mid2, 500, mid2)), glass)
	dial.Fill(harbourOffice(), paint.Flat(navy))
	dial.Fill(portLarken(), paint.Flat(navy))
}
