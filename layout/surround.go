package layout

import (
	"errors"
	"fmt"
	"image/color"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Surround says what fills the board beyond the picture: a colour, written #rrggbb, or Stretch. It is empty
// where the board ends with the picture.
type Surround string

// Stretch lets the picture's outermost colours go on to the board's edge.
const Stretch Surround = "stretch"

// Black is what fills a board where nothing was asked for and no picture can go on.
const Black Surround = "#000000"

// colourNames are the basic colours of CSS by name (CSS Color Module Level 4, 6.1; the values are recalled
// from memory).
var colourNames = map[string]Surround{
	"black": Black, "silver": "#c0c0c0", "grey": "#808080", "gray": "#808080", "white": "#ffffff",
	"maroon": "#800000", "red": "#ff0000", "purple": "#800080", "fuchsia": "#ff00ff",
	"green": "#008000", "lime": "#00ff00", "olive": "#808000", "yellow": "#ffff00",
	"navy": "#000080", "blue": "#0000ff", "teal": "#008080", "aqua": "#00ffff",
}

var hexColour = regexp.MustCompile(`^#[0-9a-f]{6}$`)

// ParseSurround reads a surround: stretch, #rrggbb, or a colour's name.
func ParseSurround(s string) (Surround, error) {
	word := strings.ToLower(strings.TrimSpace(s))
	if hex, ok := colourNames[word]; ok {
		return hex, nil
	}
	if surround := Surround(word); surround == Stretch || hexColour.MatchString(word) {
		return surround, nil
	}
	return "", fmt.Errorf("%q is not a surround\nhint: take stretch, a colour such as #203040, or one of %s", s,
		strings.Join(colourWords(), ", "))
}

// ParseColour reads a surround that is a colour.
func ParseColour(s string) (Surround, error) {
	surround, err := ParseSurround(s)
	if err != nil || surround == Stretch {
		return "", fmt.Errorf("%q is not a colour\nhint: take one such as #203040, or one of %s", s,
			strings.Join(colourWords(), ", "))
	}
	return surround, nil
}

// colourWords lists the names, in order.
func colourWords() []string { return slices.Sorted(maps.Keys(colourNames)) }

// Word is the surround as one asks for it: a colour that has a name by that, the first of several.
func (s Surround) Word() string {
	for _, name := range colourWords() {
		if colourNames[name] == s {
			return name
		}
	}
	return string(s)
}

// Colour is the surround's colour, in the artwork's own colours and opaque. ok is false where the picture
// goes on instead.
func (s Surround) Colour() (c color.RGBA, ok bool) {
	if !hexColour.MatchString(string(s)) {
		return color.RGBA{}, false
	}
	v, err := strconv.ParseUint(string(s[1:]), 16, 24)
	return color.RGBA{uint8(v >> 16), uint8(v >> 8), uint8(v), 0xff}, err == nil
}

// check refuses what ParseSurround would not have made.
func (s Surround) check() error {
	if _, ok := s.Colour(); s != "" && s != Stretch && !ok {
		return fmt.Errorf("%q is not a surround", string(s))
	}
	return nil
}

// board is the size of the board for an outline: the print's own, the surround's as asked for, or where only
// what fills it was asked for, the least that fills the frame, in whole millimetres.
func (s Setup) board(outline Plan) (Size, error) {
	if err := s.Surround.check(); err != nil {
		return Size{}, err
	}
	print, covers := outline.Picture.Print(), outline.Covers()
	switch {
	case s.Background != "" && s.SurroundSize == Size{}:
		semi, _ := seesAt(outline.Sight(), outline.Picture.Fill, Cover)
		return Size{max(print.WidthMM, 2*semi.WidthMM), max(print.HeightMM, 2*semi.HeightMM)}, nil
	case s.Background != "":
		return Size{}, errors.New("a background fills what the drop sees at the fill, and takes no size\n" +
			"hint: leave the size " +
			"out, or ask for a surround in place of the background")
	case s.Surround == "" && s.SurroundSize == Size{}:
		return print, nil
	case s.Surround == "":
		return Size{}, errors.New("a size for the surround says nothing of what fills it\nhint: ask for a surround too, a " +
			"colour or stretch")
	case s.SurroundSize == Size{}:
		return Size{max(print.WidthMM, math.Ceil(covers.WidthMM)), max(print.HeightMM, math.Ceil(covers.HeightMM))}, nil
	}
	if err := allLengths(named{"the surround's width", s.SurroundSize.WidthMM},
		named{"the surround's height", s.SurroundSize.HeightMM}); err != nil {
		return Size{}, err
	}
	if s.SurroundSize.WidthMM < print.WidthMM-tolerance || s.SurroundSize.HeightMM < print.HeightMM-tolerance {
		return Size{}, fmt.Errorf("a surround of %gx%gmm does not hold the print of %.1fx%.1fmm\nhint: make it at least as "+
			"wide and as high, or leave its size out",
			s.SurroundSize.WidthMM, s.SurroundSize.HeightMM, print.WidthMM, print.HeightMM)
	}
	return Size{max(print.WidthMM, s.SurroundSize.WidthMM), max(print.HeightMM, s.SurroundSize.HeightMM)}, nil
}
