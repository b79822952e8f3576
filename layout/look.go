package layout

import (
	"fmt"
	"strconv"
	"strings"
)

// Look says how the picture appears in the drop: 0 is bulged, as a flat print looks, wrapped round the drop;
// 1 is straight, just as drawn; between them a share.
type Look float64

// The looks that have a name.
const (
	Bulged   Look = 0
	Straight Look = 1
)

// String is the look as flags and job files write it.
func (l Look) String() string {
	switch l {
	case Bulged:
		return "bulged"
	case Straight:
		return "straight"
	}
	return strconv.FormatFloat(float64(l), 'g', -1, 64)
}

// ParseLook reads a look: bulged, straight, or a share from 0 (bulged) to 1 (straight).
func ParseLook(s string) (Look, error) {
	text := strings.ToLower(strings.TrimSpace(s))
	switch text {
	case "bulged":
		return Bulged, nil
	case "straight":
		return Straight, nil
	}
	share, err := strconv.ParseFloat(text, 64)
	if err != nil || !(share >= 0 && share <= 1) {
		return 0, fmt.Errorf("%q is not a look\nhint: take bulged, straight, or a share from 0 (bulged) to 1 (straight)", s)
	}
	return Look(share), nil
}

// MarshalText writes the look's word or share.
func (l Look) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads it.
func (l *Look) UnmarshalText(text []byte) (err error) {
	*l, err = ParseLook(string(text))
	return err
}
