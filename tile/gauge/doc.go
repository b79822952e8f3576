// Package gauge draws the page that a printer is measured with: a rule along each side of the paper, a frame
// of numbered lines that shows what the printer can't reach, steps of grey, and lines of known width.
//
// Frame: page millimetres, origin at the page's top-left corner, x right, y down. The page is upright: across
// is its shorter side, feed its longer. Everything is black or grey, so that one ink prints it.
package gauge
