package job

import (
	"context"

	"dropsheet/layout"
)

// Laid is the plan that Make would make of the order, in even cells where those take as many sheets: it takes the
// artwork itself to know which way the paper lies, where it may lie either way, and how many sheets keep seams out of
// places to avoid. Nothing is written. It returns ctx's error when ctx ends first.
func (o Order) Laid(ctx context.Context) (layout.Plan, error) {
	o.LeaveArtwork = true // which is read where it is
	m := &making{Order: o, at: o.Artwork}
	plans, err := m.prepare()
	if err != nil {
		return layout.Plan{}, err
	}
	if _, err := m.open(); err != nil {
		return layout.Plan{}, err
	}
	m.picture, _ = OnScreen(m.art, plans[0].Backdrop.Surround)
	placed, _, err := m.PlaceSeams(ctx, plans, m.picture)
	for _, p := range plans {
		if p.Backdrop.Orientation == placed.Backdrop.Orientation && len(p.Sheets) == len(placed.Sheets) {
			placed = p
		}
	}
	return layout.Rounded(placed), err
}
