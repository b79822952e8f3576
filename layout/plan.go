package layout

import "dropsheet/flip"

// Plan is the whole job in millimetres, and what a job file carries. It is made by Setup.Plan, WithSeams may
// slide its seams, and then it is only read.
type Plan struct {
	Drop     Drop     `json:"drop"`
	Picture  Picture  `json:"picture"`
	Backdrop Backdrop `json:"backdrop"`
	Camera   Camera   `json:"camera"`
	Shooting Shooting `json:"shooting,omitzero"`
	Lamps    []Lamp   `json:"lamps_mm,omitempty"` // none: lit evenly
	// LevelledFor are the lamps whose fall-off the print makes up for; none: it makes up for nothing. Other
	// lamps tried on a job leave it as it is.
	LevelledFor []Lamp  `json:"levelled_for_mm,omitempty"`
	Sheets      []Sheet `json:"sheets"` // in pasting order, which is page order
	Seams       []Seam  `json:"seams"`
	// Inches has lengths told in inches too, beside millimetres.
	Inches bool `json:"inches,omitempty"`
}

// Drop is the drop and where it hangs.
type Drop struct {
	Body flip.Body `json:"body"`
	// of a drop pressed flat or drawn long, that of the ball of its volume; of one that hangs its greatest width
	DiameterMM float64 `json:"diameter_mm"`
	// HeightOverWidth is above 0 for a drop out of round.
	HeightOverWidth float64 `json:"height_over_width,omitempty"`
	// of a drop that hangs, else 0: the width where it is held, and its liquid's capillary length
	HeldMM      float64 `json:"held_mm,omitempty"`
	CapillaryMM float64 `json:"capillary_mm,omitempty"`

	Index    float64 `json:"index"`
	Material string  `json:"material,omitempty"` // what it is made of; a number when only the index is known
	// WallMM is how thick the wall of a tube is, which is DiameterMM wide outside; 0 for none. WallOf is what it is made
	// of.
	WallMM        float64       `json:"wall_mm,omitempty"`
	WallIndex     float64       `json:"wall_index,omitempty"`
	WallOf        string        `json:"wall_of,omitempty"`
	FocalLengthMM float64       `json:"focal_length_mm"`
	DistanceMM    float64       `json:"distance_mm"`
	CameraMM      float64       `json:"camera_distance_mm"`
	Reverses      flip.Reversal `json:"reverses"`
	// how far off the axis it may fall, each way; 0 when not asked for
	TravelMM float64 `json:"travel_mm,omitempty"`
}

// Picture is what must appear in the drop, and how large it is printed for that.
type Picture struct {
	Fill            float64 `json:"fill"`
	ReachMM         float64 `json:"reach_mm"`
	NearAxisReachMM float64 `json:"near_axis_reach_mm"`
	WidthMM         float64 `json:"width_mm"` // of what is printed of it, about the axis
	HeightMM        float64 `json:"height_mm"`
	// of the whole picture, printed flat and upright; the same unless it is bent or framed otherwise
	FlatWidthMM  float64 `json:"flat_width_mm"`
	FlatHeightMM float64 `json:"flat_height_mm"`
	Look         Look    `json:"look"`
	Fit          Fit     `json:"fit"`
	Framing      Framing `json:"framing"`
	// MadeFor is what the print was bent for; nil for a plain picture.
	MadeFor *MadeFor `json:"made_for,omitempty"`
}

// Print is the size of what is printed of the picture.
func (p Picture) Print() Size { return Size{p.WidthMM, p.HeightMM} }

// Backdrop is the finished board and the paper that covers it.
type Backdrop struct {
	WidthMM  float64  `json:"width_mm"`
	HeightMM float64  `json:"height_mm"`
	Surround Surround `json:"surround,omitempty"` // what fills it beyond the picture
	// FillOnly has the surround serve the drop's view at the fill alone: cells that this does not reach have no sheet.
	FillOnly bool `json:"fill_only,omitempty"`
	Columns  int  `json:"columns"`
	Rows     int  `json:"rows"`
	// The edges of columns and rows, in rising order from 0. A cell without picture has no sheet.
	XEdgesMM    []float64   `json:"column_edges_mm"`
	YEdgesMM    []float64   `json:"row_edges_mm"`
	Paper       Paper       `json:"paper"`
	Orientation Orientation `json:"orientation"`
	MarginMM    float64     `json:"margin_mm"`            // along each edge; the widest where they differ
	Margins     *Margins    `json:"margins_mm,omitempty"` // where each edge has one of its own, without a measured printer
	LapMM       float64     `json:"lap_mm"`
	// Uncut has a print of one sheet hang on its paper as it comes: in the paper's middle, without laps and strips.
	Uncut     bool     `json:"uncut,omitempty"`
	LightFrom Corner   `json:"light_from"`
	Printer   *Printer `json:"printer,omitempty"` // the measured one that the pages are drawn for, if any
	Copies    int      `json:"copies,omitempty"`  // of the print on its one sheet, from 2; 0 for the print alone
	// NarrowStripMM is the strips' width where a reprint has no room for StripMM; 0 where it has, as in every job.
	NarrowStripMM float64 `json:"-"`
}

// Sheet is one piece of paper.
type Sheet struct {
	Name   string `json:"name"`       // R2C3: row and column from the board's top left
	Page   int    `json:"page"`       // 1 is pasted first
	Row    int    `json:"row"`        // from 1
	Column int    `json:"column"`     // from 1
	Cell   Rect   `json:"cell_mm"`    // on the board
	OnPage Point  `json:"on_page_mm"` // where the cell's top-left corner lies on its page, at scale 1
}

// Seam is the line where two neighbouring cells meet.
type Seam struct {
	Axis    string    `json:"axis"` // "x": at this board x, running down; "y": at this board y, running across
	AtMM    float64   `json:"at_mm"`
	FromMM  float64   `json:"from_mm"` // where along the other axis it starts and ends
	ToMM    float64   `json:"to_mm"`
	Between [2]string `json:"between"` // sheet names, left or upper one first
}

// Sight is the plan's drop with its camera and distance.
func (p Plan) Sight() flip.Sight {
	return flip.Sight{
		Drop: flip.Drop{Body: p.Drop.Body, DiameterMM: p.Drop.DiameterMM, Index: p.Drop.Index,
			HeightOverWidth: p.Drop.HeightOverWidth, HeldMM: p.Drop.HeldMM, CapillaryMM: p.Drop.CapillaryMM,
			WallMM: p.Drop.WallMM, WallIndex: p.Drop.WallIndex},
		CameraMM:   p.Drop.CameraMM,
		DistanceMM: p.Drop.DistanceMM,
	}
}

// Board is the backdrop's rectangle in board coordinates.
func (b Backdrop) Board() Rect { return Rect{0, 0, b.WidthMM, b.HeightMM} }

// PictureOnBoard is where the picture lies on the backdrop: in its middle, which the axis meets. Board coordinates.
func (p Plan) PictureOnBoard() Rect {
	return Rect{
		(p.Backdrop.WidthMM - p.Picture.WidthMM) / 2, (p.Backdrop.HeightMM - p.Picture.HeightMM) / 2,
		p.Picture.WidthMM, p.Picture.HeightMM,
	}
}

// Page is the page's size as it lies.
func (b Backdrop) Page() Size {
	if b.Orientation == Landscape {
		return Size{b.Paper.HeightMM, b.Paper.WidthMM}
	}
	return Size{b.Paper.WidthMM, b.Paper.HeightMM}
}

// Cut says which sides of a sheet are cut: those that face the light, and those on the board's outer edge.
// The other sides carry a lap. Of an uncut sheet there is neither.
func (b Backdrop) Cut(s Sheet) (left, top, right, bottom bool) {
	if b.Uncut {
		return false, false, false, false
	}
	return b.LightFrom.Left() || s.Column == 1,
		b.LightFrom.Top() || s.Row == 1,
		!b.LightFrom.Left() || s.Column == b.Columns,
		!b.LightFrom.Top() || s.Row == b.Rows
}

// sides gives each side of a sheet the one length if it is cut and the other if it carries a lap; none of them to an
// uncut sheet.
func (b Backdrop) sides(s Sheet, cutMM, lapMM float64) Sides {
	if b.Uncut {
		return Sides{}
	}
	pick := func(cut bool) float64 {
		if cut {
			return cutMM
		}
		return lapMM
	}
	left, top, right, bottom := b.Cut(s)
	return Sides{pick(left), pick(top), pick(right), pick(bottom)}
}

// Printed is the part of the board's plane that a sheet prints: its cell, laps and bleed. At the board's outer
// edges it runs past the board. Board coordinates.
func (b Backdrop) Printed(s Sheet) Rect { return s.Cell.Grow(b.sides(s, BleedMM, b.LapMM)) }

// Kept is what remains of a sheet when it is cut: its cell and laps; of an uncut one its cell, and the paper round it
// is PaperOnBoard. Board coordinates.
func (b Backdrop) Kept(s Sheet) Rect { return s.Cell.Grow(b.sides(s, 0, b.LapMM)) }

// Used is what a sheet takes up of its page: its cell, laps and strips. Board coordinates.
func (b Backdrop) Used(s Sheet) Rect { return s.Cell.Grow(b.sides(s, b.stripMM(), b.LapMM)) }

// stripMM is what a cut side keeps clear.
func (b Backdrop) stripMM() float64 {
	if b.NarrowStripMM > 0 {
		return b.NarrowStripMM
	}
	return StripMM
}
