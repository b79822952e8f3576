package report

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// place tells where board and camera stand, and how much of the drop the picture takes up for it.
func (r *Report) place() []Fact {
	p := r.shot.Plan
	pic := p.Picture
	reach := say("%s from the axis", strong(length("picture.reach_mm", pic.ReachMM)))
	downMM, ok := p.Sight().ReachDownMM(pic.Fill)
	switch upMM, okUp := p.Sight().ReachUpMM(pic.Fill); {
	case ok && okUp && p.Drop.Body == flip.Hanging: // what it shows below comes from above
		reach = say("%s to the sides, %s up and %s down", reach, strong(length("", downMM)), strong(length("", upMM)))
	case ok && p.Sight().Drop.Oblate():
		reach = say("%s to the sides, %s up and down", reach, strong(length("", downMM)))
	}
	ratio := pic.ReachMM / pic.NearAxisReachMM
	rim, shows := r.pastPicture()
	return []Fact{
		{Key: "place.distance", Name: "distance", Text: say("%s from the middle of the %s to the printed side of the board",
			strong(far("drop.distance_mm", p.Drop.DistanceMM)), r.body)},
		{Key: "place.camera", Name: Looker(p.Camera), Text: say("%s from the %s to the middle of the %s",
			strong(far("drop.camera_distance_mm", p.Drop.CameraMM)), r.pupil(), r.body)},
		{Key: "place.fill", Name: "fill", Text: say("the picture takes up %s of the %s's visible radius",
			strong(fill("picture.fill", pic.Fill)), r.body)},
		{Key: "place.reach", Name: "reach", Text: say("at that fill the %s sees as far as %s, traced exactly", r.body,
			reach)},
		{Key: "place.near", Text: say("the simple lens formula would give %s, wrong here by a factor of %s: "+
			"never size a print by it", length("picture.near_axis_reach_mm", pic.NearAxisReachMM),
			Figure{Value: max(ratio, 1/ratio), Decimals: 2})},
		{Key: "place.rim", Name: "rim", Text: rim},
		{Key: "place.rim_shows", Text: shows},
		{Key: "place.rim_mirrors", Text: r.rimMirrors()},
		{Key: "place.rim_dark", Text: r.rimDark()},
		{Key: "place.drops", Name: "tolerance", Text: r.otherDrop()},
		{Key: "place.boards", Text: say("with the board %s nearer the fill is %s, and %s further off it is %s",
			length("", 10), share("sensitivity.distance_10_mm_less_fill", r.sensitivity().NearerFill), length("", 10),
			share("sensitivity.distance_10_mm_more_fill", r.sensitivity().FurtherFill))},
	}
}

// far is a length that may be long, with the metres beside the millimetres from two metres on.
func far(path string, mm float64) Text {
	if mm < 2000 {
		return say("%s", length(path, mm))
	}
	return say("%s (%s)", length(path, mm), Figure{Value: mm / 1000, Unit: "m", Decimals: 2})
}

// pastPicture says what of the drop looks past the picture, and what it then shows.
func (r *Report) pastPicture() (ring, shows Text) {
	rim := r.rim()
	across, down := share("dark_rim.across_share", rim.AcrossShare), share("dark_rim.down_share", rim.DownShare)
	corner := share("dark_rim.corner_share", rim.CornerShare)
	radius := say(" of the %s's visible radius", r.body)
	past := "backdrop"
	shows = say("through it the room is seen around the board, bright or dark as that is")
	if r.unfilled() {
		past = "picture"
		shows = say("through it white paper is seen where that goes on beyond the picture, and else the room")
	}
	switch r.shot.Drop.Reverses {
	case flip.ReversesX:
		ring = say("%s%s at its left and right edges", across, radius)
	case flip.ReversesY:
		ring = say("%s%s at its upper and lower edges", down, radius)
	default:
		switch {
		case across.Number() == down.Number() && across.Number() == corner.Number():
			ring = say("an even %s%s", across, radius)
		case r.unfilled():
			ring = say("%s%s where that is widest, %s where it is narrowest", across, radius, corner)
		default:
			ring = say("%s%s at the backdrop's left and right, %s above and below, %s toward the corners", across, radius,
				down, corner)
		}
	}
	return say("the outermost ring of the %s looks past the %s: %s", r.body, past, ring), shows
}

// rimMirrors says what the drop's front mirrors in that ring.
func (r *Report) rimMirrors() Text {
	m := r.mirror()
	across, down := share("mirrored_rim.across_from_share", m.AcrossFromShare), share("mirrored_rim.down_from_share",
		m.DownFromShare)
	from := say("from %s of the radius at the left and right, and from %s above and below", across, down)
	switch {
	case r.shot.Drop.Body == flip.Hanging:
		from = say("from %s of the radius at the left and right", across)
	case m.AcrossFromShare == 0:
		from = say("from %s of the radius", down)
	case m.DownFromShare == 0 || across.Number() == down.Number():
		from = say("from %s of the radius", across)
	}
	return say("outward %s, the %s's front mirrors the print once more, the way up it hangs and its "+
		"middle outermost: in a thin band, bright at the very edge", from, r.body)
}

// rimDark says what makes the rest of it dark.
func (r *Report) rimDark() Text {
	m, p := r.mirror(), r.shot.Picture
	needs := m.DarkSurround
	switch {
	case needs == layout.Size{}:
		return say("no surround is wide enough to keep it dark between the picture and the mirrored print: a dark room does")
	case needs.WidthMM <= p.WidthMM && needs.HeightMM <= p.HeightMM:
		return say("the mirrored print begins before the picture ends, and nothing dark lies between")
	}
	return say("a dark surround of %s keeps it dark as far as that band",
		size(enough("mirrored_rim.dark_surround_mm.width", needs.WidthMM),
			enough("mirrored_rim.dark_surround_mm.height", needs.HeightMM)))
}

// unfilled tells whether nothing is printed in what the picture leaves of the board.
func (r *Report) unfilled() bool {
	return !r.shot.Picture.Plain() && r.shot.Backdrop.Surround == ""
}

// hardlyShare is the change of the fill that no one sees: one hundredth of the drop's radius.
const hardlyShare = 0.01

// otherDrop says what becomes of the fill when the drop is not as large as planned.
func (r *Report) otherDrop() Text {
	if r.shot.Drop.Body == flip.Hanging {
		return say("a print fits a hanging drop of one width: %s", r.otherHanging())
	}
	s, fill := r.sensitivity(), share("picture.fill", r.shot.Picture.Fill)
	smaller := share("sensitivity.drop_10_percent_smaller_fill", s.DropSmallerFill)
	larger := share("sensitivity.drop_10_percent_larger_fill", s.DropLargerFill)
	ten := share("", 0.1)
	off := math.Max(math.Abs(s.DropSmallerFill-fill.Value), math.Abs(s.DropLargerFill-fill.Value))
	hardly := "the print hardly depends on the %s's size"
	if off > hardlyShare {
		hardly = "the %s's size matters here"
	}
	if smaller.Number() == fill.Number() && larger.Number() == fill.Number() {
		return say(hardly+": %s smaller or larger, the picture still fills %s of the %s", r.body, ten, fill, r.body)
	}
	return say(hardly+": %s smaller or larger, the picture fills %s or %s of the %s", r.body, ten, smaller, larger, r.body)
}

// Corner writes a corner in words, as seen by someone who faces the printed side.
func Corner(c layout.Corner) string {
	vertical, horizontal := CornerSides(c)
	return vertical + " " + horizontal
}

// CornerSides writes the two sides that meet in a corner.
func CornerSides(c layout.Corner) (vertical, horizontal string) {
	vertical, horizontal = "bottom", "right"
	if c.Top() {
		vertical = "top"
	}
	if c.Left() {
		horizontal = "left"
	}
	return vertical, horizontal
}
