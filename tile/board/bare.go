package board

import "dropsheet/tile/texture"

// PaperReflectance is how much light the bare edge of a sheet throws back, as a share of what falls on it:
// uncoated white paper (common practice, no source).
const PaperReflectance = 0.80

// Room is the light that comes from where there is neither print nor paper: a dark room, just above black so
// that the board's edge can be told.
var Room = texture.Light{0.0030, 0.0030, 0.0037}
