package board

import "dropsheet/tile/texture"

// PaperWhite is how much light the bare edge of a sheet sends back, as a share of the artwork's white. White is printed
// with no ink, so the two are the same paper; fluorescing brighteners and a sheet's shine are in both.
const PaperWhite = 1.0

// Room is the light that comes from where there is neither print nor paper: a dark room, just above black so
// that the board's edge can be told.
var Room = texture.Light{0.0030, 0.0030, 0.0037}
