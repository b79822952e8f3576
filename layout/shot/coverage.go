package shot

import "dropsheet/layout"

// Coverage is what the frame sees of the board's plane past the drop, and whether the board's edge shows there.
// The drop hides the middle of it. The board's middle lies on the axis, so opposite edges show alike.
type Coverage struct {
	Sees layout.Size `json:"sees_mm"` // the part of the board's plane that the frame takes in
	// how wide the board's edge is blurred there, half of it to either side
	EdgeBlurMM    float64     `json:"edge_blur_mm"`
	Needs         layout.Size `json:"needs_mm"`       // the least board that fills the frame: what it sees and the blur
	BackdropShare float64     `json:"backdrop_share"` // of the backdrop's area, 0 to 1: how much the frame takes in
	Edges         []BoardEdge `json:"edges"`          // the board's edges that show; none when the board fills the frame
	// PrintEnds is where what is printed ends on the board inside the frame; nil where it does not.
	PrintEnds *PrintEnds `json:"print_ends,omitempty"`
}

// BoardEdge is an edge of the board that shows in the frame.
type BoardEdge struct {
	Side string `json:"side"` // of the frame: left, top, right or bottom
	// AtPx is where it shows: the frame's x of an upright edge, y of a level one. Less than 0 or more than the
	// frame's pixels when only its blur comes in.
	AtPx float64 `json:"at_px"`
}

// Covered tells whether the board fills the frame.
func (c Coverage) Covered() bool { return len(c.Edges) == 0 }

// Coverage works it out. The frame's rectangle in the drop's plane, seen on from the entrance pupil, is (D +
// L)/D times as large at the board.
func (s Shot) Coverage() Coverage {
	far := s.BoardPerDrop()
	b, c := s.Backdrop, s.Camera
	out := Coverage{Sees: s.Sees(), EdgeBlurMM: s.BoardBlurMM(), Needs: s.Covers(), Edges: []BoardEdge{}}
	seen := min(b.WidthMM, out.Sees.WidthMM) * min(b.HeightMM, out.Sees.HeightMM)
	out.BackdropShare = seen / (b.WidthMM * b.HeightMM)
	if b.WidthMM < out.Needs.WidthMM-tolerance {
		half := b.WidthMM / 2 / far / c.FrameWidthMM * float64(c.WidthPx)
		out.Edges = append(out.Edges, BoardEdge{"left", float64(c.WidthPx)/2 - half},
			BoardEdge{"right", float64(c.WidthPx)/2 + half})
	}
	if b.HeightMM < out.Needs.HeightMM-tolerance {
		half := b.HeightMM / 2 / far / c.FrameHeightMM * float64(c.HeightPx)
		out.Edges = append(out.Edges, BoardEdge{"top", float64(c.HeightPx)/2 - half},
			BoardEdge{"bottom", float64(c.HeightPx)/2 + half})
	}
	out.PrintEnds = s.printEnds(out)
	return out
}
