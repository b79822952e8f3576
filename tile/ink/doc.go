// Package ink draws lines, dashes and text on an RGBA picture, in pixels. It knows nothing of what the drawing means.
//
// Frame: pixels, x right and y down, whole numbers at pixel corners, so that the centre of pixel (i, j) is at
// (i + 0.5, j + 0.5). Everything is antialiased by the share of a pixel that it covers, and colours mix as
// they are stored (in sRGB levels).
package ink
