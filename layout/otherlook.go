package layout

// WithLook is the plan laid out anew with another look: the same drop, distance and fill, and so another print.
func (p Plan) WithLook(l Look) (Plan, error) {
	s := p.setup()
	s.Look, s.Print, s.MaxSheets = l, Size{}, mostSheets
	if p.Backdrop.Surround != Stretch {
		s.Background = p.Backdrop.Surround
	}
	return s.Plan()
}
