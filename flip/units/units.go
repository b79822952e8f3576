// Package units holds the units that dropsheet reads and writes: lengths in millimetres, times in seconds,
// resolutions in pixels, page space in points.
//
// Everything inside the program is millimetres and seconds in float64. The factors below are the only place
// where another unit enters or leaves.
package units

// Conversion factors, named by direction.
const (
	// MMPerInch is exact: the international inch (ISO 80000-3:2006, annex C).
	MMPerInch = 25.4
	// PointsPerInch is the unit of PDF user space (ISO 32000-1, 8.3.2.3).
	PointsPerInch = 72.0
)

// MMToPoints converts millimetres to PDF points.
func MMToPoints(mm float64) float64 { return mm / MMPerInch * PointsPerInch }

// PointsToMM converts PDF points to millimetres.
func PointsToMM(pt float64) float64 { return pt / PointsPerInch * MMPerInch }

// Resolution says how densely pixels are laid on paper. Make one with PerInch or PerMM, so that it can't be misread.
type Resolution struct{ perMM float64 }

// PerInch is a resolution of ppi pixels to the inch.
func PerInch(ppi float64) Resolution { return Resolution{ppi / MMPerInch} }

// PerMM is a resolution of n pixels to the millimetre.
func PerMM(n float64) Resolution { return Resolution{n} }

// PixelsPerMM returns the pixels on one millimetre.
func (r Resolution) PixelsPerMM() float64 { return r.perMM }

// PixelsPerInch returns the pixels on one inch.
func (r Resolution) PixelsPerInch() float64 { return r.perMM * MMPerInch }
