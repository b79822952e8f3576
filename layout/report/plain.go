package report

// Figures for those who draw and list what no fact tells. None of them is in JSON.

// Words are words without a figure.
func Words(text string) Text { return Text{{Words: text}} }

// Length is a length, to a tenth of a millimetre.
func Length(mm float64) Figure { return length("", mm) }

// Fine is a length to a hundredth of a millimetre.
func Fine(mm float64) Figure { return Figure{Value: mm, Unit: MM, Decimals: 2} }

// WholeMM is a length in whole millimetres.
func WholeMM(mm float64) Figure { return whole("", mm, MM) }

// Far is a length that may be long, with the metres beside the millimetres from two metres on.
func Far(mm float64) Text { return far("", mm) }

// Size is a width and a height.
func Size(widthMM, heightMM float64) Text { return size(Length(widthMM), Length(heightMM)) }

// Share is a share of 1.
func Share(of1 float64) Figure { return share("", of1) }

// Fill is a share of the drop's radius that a picture takes up.
func Fill(of1 float64) Figure { return fill("", of1) }

// Count is how many of a thing there are.
func Count(n int, one, many Unit) Figure { return counted("", n, one, many) }

// Number is a number with at most so many decimals.
func Number(v float64, decimals int) Figure { return Figure{Value: v, Decimals: decimals} }

// Stop is an f-number as a lens is marked.
func Stop(fNumber float64) Figure { return stop("", fNumber) }

// PerInch is a resolution, in whole pixels to the inch.
func PerInch(ppi float64) Text { return say("%s to the inch", whole("", ppi, Pixels)) }
