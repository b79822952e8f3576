package layout

import (
	"fmt"
	"slices"
	"strings"
)

// Fit says how the picture meets the reach.
type Fit string

// The fits.
const (
	Cover  Fit = "cover"  // the picture's shorter half-side equals the reach: no dark rim inside the fill
	Inside Fit = "inside" // its half-diagonal does: the whole picture lies inside the fill
)

// ParseFit reads a fit.
func ParseFit(s string) (Fit, error) { return oneOf("fit", s, Cover, Inside) }

// Focus says what the camera is focused on.
type Focus string

// The focuses.
const (
	// between the drop's edge and the picture in it, where the worse of them is least blurred
	FocusBest    Focus = "best"
	FocusEdge    Focus = "edge"    // on the drop's visible edge
	FocusPicture Focus = "picture" // where the picture is least blurred, counted over its area
	FocusWhole   Focus = "whole"   // where the worse of the edge and the picture, counted over its area, is least blurred
)

// ParseFocus reads a focus.
func ParseFocus(s string) (Focus, error) {
	return oneOf("focus", s, FocusBest, FocusEdge, FocusPicture, FocusWhole)
}

// Orientation says which way the paper lies.
type Orientation string

// The orientations. A Plan holds portrait or landscape, never auto.
const (
	Auto      Orientation = "auto" // whichever takes fewer sheets
	Portrait  Orientation = "portrait"
	Landscape Orientation = "landscape"
)

// ParseOrientation reads an orientation.
func ParseOrientation(s string) (Orientation, error) {
	return oneOf("orientation", s, Auto, Portrait, Landscape)
}

// Corner names the corner of the board that faces the lamp: cut edges face it, pasting starts there.
type Corner string

// The corners.
const (
	TopLeft     Corner = "top-left"
	TopRight    Corner = "top-right"
	BottomLeft  Corner = "bottom-left"
	BottomRight Corner = "bottom-right"
)

// ParseCorner reads a corner.
func ParseCorner(s string) (Corner, error) {
	return oneOf("corner", s, TopLeft, TopRight, BottomLeft, BottomRight)
}

// Left tells whether the corner is one of the left two.
func (c Corner) Left() bool { return c == TopLeft || c == BottomLeft }

// Top tells whether the corner is one of the upper two.
func (c Corner) Top() bool { return c == TopLeft || c == TopRight }

// oneOf reads a word that must be one of those listed.
func oneOf[W ~string](what, s string, words ...W) (W, error) {
	if slices.Contains(words, W(s)) {
		return W(s), nil
	}
	var list []string
	for _, w := range words {
		list = append(list, string(w))
	}
	article := "a"
	if strings.ContainsRune("aeiou", rune(what[0])) {
		article = "an"
	}
	return "", fmt.Errorf("%q is not %s %s\nhint: take %s", s, article, what, orList(list))
}

// orList names all of a list, of which one is to be taken.
func orList(list []string) string {
	last := len(list) - 1
	if last < 1 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:last], ", ") + " or " + list[last]
}
