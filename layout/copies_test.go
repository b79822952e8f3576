package layout

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
)

// rodSetup is a rod's, whose print is a ribbon.
func rodSetup() Setup {
	s := plain()
	s.Drop = flip.Drop{Body: flip.UprightRod, DiameterMM: 20, Index: 1.5168}
	s.Look, s.DistanceMM = Straight, 120
	return s
}

// Copies lie on one page, each with its strips, apart from one another and inside the printer's margins, and there is
// no room for one more than are allowed.
func TestCopiesShareASheet(t *testing.T) {
	margin := 5.0
	for _, copies := range []int{1, 2, 3, 6} {
		s := rodSetup()
		s.Copies = copies
		p := mustPlan(t, s)
		require.NoError(t, p.Check())
		require.Len(t, p.Sheets, 1)
		b := p.Backdrop
		on := b.OnSheet(p.Sheets[0])
		require.Len(t, on, copies)
		page := b.Page()
		inside := Rect{margin, margin, page.WidthMM - 2*margin, page.HeightMM - 2*margin}
		var all []Rect
		for _, copied := range on {
			used := b.OnPage(copied).Used
			require.True(t, inside.contains(used), "%v", used)
			strips := 12.0
			if copies == 1 { // one print is not cut
				strips = 0
			}
			require.InDelta(t, p.Picture.HeightMM+strips, used.HeightMM, 1e-9, "a strip of 6 mm on either side")
			for _, other := range all {
				apart := used.XMM >= other.RightMM()-1e-9 || used.RightMM() <= other.XMM+1e-9 ||
					used.YMM >= other.BottomMM()-1e-9 || used.BottomMM() <= other.YMM+1e-9
				require.True(t, apart, "%v and %v", used, other)
			}
			all = append(all, used)
		}
		require.InDelta(t, page.HeightMM, all[0].YMM+all[len(all)-1].BottomMM(), 1e-6, "in the page's middle")
	}
	s := rodSetup() // 200 mm within the margins over 17.6 + 12: six, and 287 over 29.6 nine of those that are 200 wide
	s.Copies = 7
	_, err := s.Plan()
	require.ErrorContains(t, err, "and a sheet of A4 holds 6\nhint: ask for fewer")
	s.Copies, s.DistanceMM = 2, 400
	_, err = s.Plan()
	require.ErrorContains(t, err, "it does not go on one sheet of A4")
	s.Copies = 101
	_, err = s.Plan()
	require.ErrorContains(t, err, "take 1 to 100")
}

// With one sheet allowed the print is the largest of which it holds so many: by a hundredth more it does not.
func TestLargestPrintOfCopies(t *testing.T) {
	for _, change := range []func(*Setup){func(*Setup) {}, func(s *Setup) { s.Drop, s.Look = plain().Drop, Bulged }} {
		s := rodSetup()
		s.DistanceMM, s.MaxSheets, s.Copies = 0, 1, 4
		change(&s)
		p := mustPlan(t, s)
		require.NoError(t, p.Check())
		require.Len(t, p.Backdrop.OnSheet(p.Sheets[0]), 4)
		s.MaxSheets, s.DistanceMM, s.Fill = 0, 1.01*p.Drop.DistanceMM, p.Picture.Fill
		_, err := s.Plan()
		require.ErrorContains(t, err, "copies of a backdrop")
	}
}

// A plan that says it has copies and has not the room, or is of several sheets, does not hold together.
func TestCopiesThatCantBe(t *testing.T) {
	s := rodSetup()
	s.Copies = 3
	p := mustPlan(t, s)
	p.Backdrop.Copies = 30
	require.Error(t, p.Check())
	many := mustPlan(t, plain())
	require.Greater(t, len(many.Sheets), 1)
	many.Backdrop.Copies = 2
	require.ErrorContains(t, many.Check(), "2 copies")
}
