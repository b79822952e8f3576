package guide

import (
	"fmt"
	"slices"
	"strings"

	"dropsheet/layout/report"
)

const cautionsTitle = "Cautions"

// caution is one danger and how to keep out of it.
type caution struct {
	of          report.Hazard
	about, text string
}

// cautionsList is general advice (common practice, no source); makers, local rules and licensed trades know
// better, and the page says so.
var cautionsList = []caution{
	{report.HotLamps, "Hot lamps", "Strong lamps grow hot enough to scorch paper and set it on fire. Keep them as far " +
		"from paper, board and cloth as their maker says, never leave them on alone, and let them cool before you move " +
		"them. Filters before a hot lamp must be made for its heat, and stand off from it as their maker says."},
	{report.EthanolVapour, "Ethanol", "Ethanol and its vapour catch fire, and the flame is hard to see. Keep both away " +
		"from hot lamps, flames and sparks, air the room, and have no more of it open than the shot needs. Follow the " +
		"marks on its bottle, and ask its maker or the fire service how it is kept and put out."},
	{report.MainsByWater, "Mains and water", "Water and mains electricity stand close together here. Keep plugs, " +
		"sockets, lamps and chargers off the floor and out of the reach of drops and spills. Dry your hands before you " +
		"touch them. Use a socket with a residual-current device (RCD, GFCI). Leave anything wired for good, or beyond " +
		"plugging in, to a licensed electrician."},
	{report.Glass, "Glass", "Glass rods, tubes and balls break. Look for chips, force none into a holder, and wear " +
		"gloves and glasses when you cut, push or clamp one. Cover it when it is not in use: in the sun or in a " +
		"lamp\u2019s beam it gathers light and can set paper on fire."},
	{report.Knives, "Knives", "Cut away from your body and your other hand, with a sharp blade and light strokes, " +
		"against a steel rule. Put the cap on between cuts, and old blades in a closed tin."},
	{report.SprayGlue, "Glue", "Spray glue is bad to breathe and catches fire. Spray outdoors or with the windows open, " +
		"away from lamps, flames and sparks, and follow the marks on the can."},
	{report.BoardDust, "Board and paint", "The dust of MDF and plywood is bad to breathe. Have boards cut where " +
		"they are sold, or cut them outdoors with the mask that their maker names. Paint with the windows open."},
	{report.Flashes, "Bright and flashing light", "Do not look into the lamps. Flashing light, and lamps that seem to " +
		"flicker, can bring on a seizure in people who are sensitive to it: warn everyone before you switch on, and stop " +
		"at once if someone feels unwell."},
	{report.Slips, "Floors and ladders", "Wipe up spilt water, tape cables to the floor, and weigh down stands. Stand a " +
		"step ladder on dry, level ground, and do not lean out from it."},
	{report.LargeBoard, "A large board", "A board over a metre is carried and hung by two persons. Fasten it at the top " +
		"too, so that it can\u2019t tip, and keep it out of the way and out of the wind."},
}

// cautions lists the dangers of the job.
func (b *book) cautions() {
	b.intro("Read this before you start, and to everyone who helps.")
	there := report.Hazards(b.job.Plan)
	for _, c := range cautionsList {
		if slices.Contains(there, c.of) {
			b.topic(c.about, func(b *book) { b.para(c.text) })
		}
	}
	b.y += 2
	b.note("This page can\u2019t know your room and your tools. " +
		strong("Makers\u2019 instructions, local rules and the advice of licensed trades come before anything said here."))
}

// beforeYouStart names the dangers where everybody looks.
func (b *book) beforeYouStart() {
	var names []string
	for _, h := range report.Hazards(b.job.Plan) {
		names = append(names, string(h))
	}
	last := len(names) - 1
	b.wideNote(fmt.Sprintf("%s read the cautions on page%s%d: of %s and %s. Makers\u2019 instructions, local rules and "+
		"licensed trades come before anything said here.", strong("Before you start,"), noBreak,
		b.pageOf(slices.IndexFunc(b.sections, func(s section) bool { return s.title == cautionsTitle })),
		strings.Join(names[:last], ", "), names[last]))
}
