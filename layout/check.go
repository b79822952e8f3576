package layout

import (
	"errors"
	"fmt"
	"math"
)

// tolerance is how far a plan that was written out and read back may be off, in mm.
const tolerance = 1e-6

// mostSheets bounds a plan, asked for or read back, so that a slip or a broken file can't ask for work without end.
const mostSheets = 10_000

// Check tells whether a plan that was read back from a file holds together: finite lengths, cells that cover the
// backdrop exactly, pages that hold their sheets. It returns the first thing that does not.
func (p Plan) Check() error {
	b := p.Backdrop
	for _, f := range []named{
		{"the drop's diameter", p.Drop.DiameterMM}, {"the distance", p.Drop.DistanceMM},
		{"the camera distance", p.Drop.CameraMM},
		{"the backdrop's width", b.WidthMM}, {"the backdrop's height", b.HeightMM},
		{"the paper's width", b.Paper.WidthMM}, {"the paper's height", b.Paper.HeightMM}, {"the lap", b.LapMM},
		{"the frame's width", p.Camera.FrameWidthMM}, {"the frame's height", p.Camera.FrameHeightMM},
		{"the lens's focal length", p.Camera.LensMM}, {"the focus", p.Camera.FocusMM},
		{"the sensor's width", p.Camera.Sensor.WidthMM},
		{"the sensor's height", p.Camera.Sensor.HeightMM}, {"the drop's focal length", p.Drop.FocalLengthMM},
		{"the reach", p.Picture.ReachMM},
	} {
		if err := allLengths(f); err != nil {
			return err
		}
	}
	if err := p.checkAsked(); err != nil {
		return err
	}
	switch {
	case b.Columns < 1 || b.Rows < 1 || b.Columns > mostSheets || b.Rows > mostSheets || b.Columns*b.Rows > mostCells ||
		len(p.Sheets) < 1 || len(p.Sheets) > b.Columns*b.Rows:
		return fmt.Errorf("%d columns and %d rows do not make %d sheets", b.Columns, b.Rows, len(p.Sheets))
	case b.Copies < 0 || b.Copies > mostCopies || b.Copies > 0 && len(p.Sheets) != 1:
		return fmt.Errorf("%d copies can't be on each of %d sheets", b.Copies, len(p.Sheets))
	case b.Uncut && len(p.Sheets) != 1:
		return fmt.Errorf("%d sheets are not one that hangs uncut", len(p.Sheets))
	case p.Drop.Reverses.Turn() != p.Sight().Reverses().Turn():
		return fmt.Errorf("the drop does not reverse %q at that distance", p.Drop.Reverses)
	case !(p.Picture.NearAxisReachMM > 0 && p.Picture.NearAxisReachMM <= MaxLengthMM):
		return fmt.Errorf("a reach of %gmm by the formula for rays near the axis can't be", p.Picture.NearAxisReachMM)
	case !(p.Picture.WidthMM > 0 && p.Picture.HeightMM > 0 && p.Picture.WidthMM <= b.WidthMM+tolerance &&
		p.Picture.HeightMM <= b.HeightMM+tolerance):
		return errors.New("the backdrop does not hold the picture")
	case b.Surround == "" && (b.WidthMM-p.Picture.WidthMM > tolerance || b.HeightMM-p.Picture.HeightMM > tolerance):
		return errors.New("the backdrop is larger than the picture, and nothing fills the rest")
	}
	if err := checkPrint(p.Picture.WidthMM, p.Picture.HeightMM); err != nil {
		return err
	}
	for _, word := range []error{
		second(ParseCorner(string(b.LightFrom))), second(ParseFit(string(p.Picture.Fit))),
		second(ParseFocus(string(p.Camera.Focus))), b.Surround.check(),
		second(oneOf("orientation", string(b.Orientation), Portrait, Landscape)),
	} {
		if word != nil {
			return word
		}
	}
	if err := p.checkBend(); err != nil {
		return err
	}
	if err := p.checkSheets(); err != nil {
		return err
	}
	if err := p.checkSeams(); err != nil {
		return err
	}
	return p.checkLevel()
}

// checkAsked holds the plan to the bounds of what may be asked for.
func (p Plan) checkAsked() error {
	if !(p.Picture.Fill > 0) || !(p.Camera.SharpToPx > 0) {
		return errors.New("the fill, or the blur that passes for sharp, is not above 0")
	}
	s := p.AsSetup()
	s.Surround = p.Backdrop.Surround
	// A print may be a little off the picture's proportions, which is all that the plan tells of them.
	for _, bound := range []float64{leastProportions, mostProportions} {
		if math.Abs(s.Proportions/bound-1) <= proportionsAgree {
			s.Proportions = bound
		}
	}
	if err := s.check(); err != nil {
		return err
	}
	if _, err := s.Camera.camera(s.CameraMM); err != nil {
		return err
	}
	if f := s.Drop.FocalLengthMM(); !(math.Abs(p.Drop.FocalLengthMM/f-1) <= 1e-6) {
		return fmt.Errorf("the drop's focal length is %gmm, and its index and width make it %gmm", p.Drop.FocalLengthMM, f)
	}
	return nil
}

// checkSeams checks that the seams are those that the sheets make: one without end would be looked at without end.
func (p Plan) checkSeams() error {
	made := p.Backdrop.seams(p.Sheets)
	if len(made) != len(p.Seams) {
		return fmt.Errorf("its sheets make %d seams, and it lists %d", len(made), len(p.Seams))
	}
	for i, s := range p.Seams {
		m := made[i]
		apart := math.Abs(s.AtMM-m.AtMM) + math.Abs(s.FromMM-m.FromMM) + math.Abs(s.ToMM-m.ToMM)
		if s.Axis != m.Axis || s.Between != m.Between || !(apart <= tolerance) {
			return fmt.Errorf("seam %d of its seams is not where its sheets meet", i+1)
		}
	}
	return nil
}

func second[T any](_ T, err error) error { return err }

// checkEdges checks that the edges of columns or rows rise from 0 to the board's end.
func checkEdges(edges []float64, n int, lengthMM float64) error {
	if len(edges) != n+1 || !(math.Abs(edges[0]) <= tolerance && math.Abs(edges[n]-lengthMM) <= tolerance) {
		return errors.New("the cells do not cover the backdrop")
	}
	for i := range n {
		if !(edges[i+1] > edges[i]) {
			return errors.New("the edges of the cells do not rise")
		}
	}
	return nil
}

// checkSheets checks each sheet's name, cell and place.
func (p Plan) checkSheets() error {
	b, room := p.Backdrop, p.Backdrop.room()
	if err := errors.Join(checkEdges(b.XEdgesMM, b.Columns, b.WidthMM),
		checkEdges(b.YEdgesMM, b.Rows, b.HeightMM)); err != nil {
		return err
	}
	if len(p.Sheets) != b.Columns*b.Rows && (b.Surround != "" && !b.FillOnly || p.Picture.Plain()) {
		return fmt.Errorf("%d columns and %d rows do not make %d sheets", b.Columns, b.Rows, len(p.Sheets))
	}
	seen := map[string]bool{}
	for i, s := range p.Sheets {
		c := s.Cell
		if seen[s.Name] {
			return fmt.Errorf("sheet %s is there twice", s.Name)
		}
		seen[s.Name] = true
		if s.Row < 1 || s.Row > b.Rows || s.Column < 1 || s.Column > b.Columns || s.Page != i+1 ||
			s.Name != sheetName(s.Row, s.Column) {
			return fmt.Errorf("sheet %d, %q, is not numbered as its place asks", i+1, s.Name)
		}
		for _, edge := range [4][2]float64{
			{b.XEdgesMM[s.Column-1], c.XMM}, {b.XEdgesMM[s.Column], c.RightMM()}, {b.YEdgesMM[s.Row-1], c.YMM},
			{b.YEdgesMM[s.Row], c.BottomMM()},
		} {
			if !(math.Abs(edge[0]-edge[1]) <= tolerance) {
				return fmt.Errorf("the cell of %s does not meet its neighbours", s.Name)
			}
		}
		for _, copied := range b.OnSheet(s) {
			if !room.contains(b.OnPage(copied).Used) {
				return fmt.Errorf("sheet %s does not fit its paper", s.Name)
			}
		}
	}
	return nil
}
