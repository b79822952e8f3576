// Package guide writes the assembly guide: a PDF that leads someone who never did this from shopping to the hung
// board, on paper that people have, whatever the sheets are printed on.
//
// Frame: guide millimetres, origin at the page's top-left corner, x right, y down. One guide millimetre is
// geometry.scale millimetres on paper: 1 from A5 to A4, a little more on larger paper so that the type grows
// with it, and less on paper smaller than A5. Nothing optical is worked out here; every figure is read from
// the plan.
package guide
