package ask

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/flip"
	"dropsheet/flip/motion"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job"
)

// setup is what size and make are both asked for.
type setup struct {
	flags      *pflag.FlagSet
	asked      layout.Setup // of which some figures come from the words below
	camera     camera
	material   flip.Material
	wall       flip.Material // of a tube
	dropsPerML float64
	nozzleMM   float64
	jetMM      float64
	sharpToPx  float64
	picture    picture
	printer    string
	margin     margins
	limits     artwork.Limits
	artwork    string // the picture's file; empty for none, and for that of a job
	again      again
	fromJob    map[string]bool // flags whose words are those of the job
}

// Bounds of numbers without a unit.
const (
	leastDropsPerML = 1e-3 // a drop of a litre
	maxDropsPerML   = 1e6  // a mist
	maxSharpToPx    = 1e6
	leastOblate     = 0.8
	mostOblate      = 1.35
)

// register adds the flags, with their defaults.
func (s *setup) register(flags *pflag.FlagSet) {
	s.flags, s.fromJob = flags, map[string]bool{}
	add(flags, &s.asked.Drop.Body, "body", "ball|hanging|upright-rod|level-rod", "ball", flip.ParseBody,
		"what refracts: ball (a falling drop), hanging (a drop at a needle, a tap or a blade of grass), upright-rod or "+
			"level-rod (a glass or tube of liquid)")
	add(flags, &s.asked.Drop.DiameterMM, "drop", "length", "5mm", aboveZero, "diameter of the drop or rod; of a "+
		"hanging drop its greatest width, 3mm unless given")
	add(flags, &s.asked.Drop.HeldMM, "held", "length", "", aboveZero, "width where a hanging drop is held, such as its "+
		"needle's (default 2mm)")
	add(flags, &s.dropsPerML, "drops-per-ml", "number", "", number(leastDropsPerML, maxDropsPerML),
		"size of the drop by how many make a millilitre, in place of --drop; a dropper's usual figure is 20")
	add(flags, &s.nozzleMM, "nozzle", "length", "", aboveZero, "size of the drop by the nozzle that it falls "+
		"off, slowly: "+
		"its outer diameter, in place of --drop")
	add(flags, &s.jetMM, "jet", "length", "", aboveZero, "size of the drops by the jet that falls apart into them: its "+
		"diameter, in place of --drop")
	add(flags, &s.asked.Drop.HeightOverWidth, "oblate", "ratio", "", within(leastOblate, mostOblate),
		"height of a ball over its width, 0.8 to 1.35: below 1 pressed flat, above 1 drawn long, its volume still that of "+
			"--drop (default: round)")
	add(flags, &s.material, "liquid", "name|index", "water", flip.ParseMaterial, "what the drop or rod is made of: "+
		materialNames()+", or a refractive index above 1")
	add(flags, &s.asked.Drop.WallMM, "wall", "length", "", aboveZero, "of a rod that is a tube or a glass: how thick its "+
		"wall is; --drop is its width outside")
	add(flags, &s.wall, "wall-of", "name|index", "crown-glass", flip.ParseMaterial, "what the wall is of, such as "+
		"acrylic, or a refractive index above 1")
	add(flags, &s.asked.DistanceMM, "distance", "length", "", aboveZero,
		"from the drop's centre to the backdrop (default 200mm, or what print size and fill ask for)")
	add(flags, &s.asked.Fill, "fill", "share", "", number(0, 1),
		"share of the drop's visible radius that the picture takes up, above 0 and below 1 (default 0.85, or what "+
			"print size and distance give)")
	add(flags, &s.asked.Fit, "fit", "cover|inside", "cover", layout.ParseFit,
		"cover: the picture fills the drop as far as --fill, and is cut there; inside: all of it shows within --fill; a "+
			"rod is filled from side to side by both")
	s.picture.register(flags)
	add(flags, &s.asked.Print, "print-size", "WxH", "", sizeOrWidthMM,
		"size of the printed picture, such as 900x600mm, or its width alone; any two of distance, print size and fill "+
			"give the third")
	add(flags, &s.asked.Surround, "surround", "colour|stretch", "", layout.ParseSurround,
		"fill the board beyond the picture, with a colour such as #203040 or navy, or by stretch, which carries the "+
			"picture's edge on (default: the board ends with the picture)")
	add(flags, &s.asked.SurroundSize, "surround-size", "WxH", "", sizeMM,
		"size of the board with its surround, the picture in the middle (default: what fills the frame)")
	add(flags, &s.asked.TravelMM, "travel", "length", "", aboveZero,
		"how far off the axis the drop may fall, up, down or sideways, up to 1m: shows how much of the picture then "+
			"stays visible")
	add(flags, &s.asked.MaxSheets, "max-sheets", "N", "", wholeFromOne,
		"at most that many sheets, up to 10000 (500 unless given); in place of --print-size it finds the largest print "+
			"that they hold")
	add(flags, &s.asked.Copies, "copies", "N", "", wholeFromOne,
		"the print so many times on the one sheet that holds it, each with its own cut marks; with --max-sheets 1 the "+
			"largest print of which so many fit")
	add(flags, &s.asked.Columns, "columns", "N", "", wholeFromOne,
		"exactly so many sheets side by side; where the print may have any size, the largest that they hold")
	add(flags, &s.asked.Rows, "rows", "N", "", wholeFromOne,
		"exactly so many sheets one above the other; the print as with --columns")
	add(flags, &s.asked.Board.WidthMM, "board-width", "length", "", aboveZero, fmt.Sprintf("width of the board that "+
		"you have, its border of %gmm on each side counted; where the print may have any size, the largest that goes on it",
		layout.BorderMM))
	add(flags, &s.asked.Board.HeightMM, "board-height", "length", "", aboveZero,
		"height of the board that you have; likewise")
	add(flags, &s.asked.Paper, "paper", "name|WxH", "A4", layout.ParsePaper, "what to print on: "+layout.PapersTaken)
	add(flags, &s.margin, "margin", "length|L,T,R,B", "5mm", margin, "what the printer can't reach along each edge of "+
		"the paper: one for all, or left, top, right and bottom of the upright page, such as 4,4,4,12mm; 0mm is "+
		"for a borderless print: sheets then stay 1.5 % of the page off its edge, which drivers that enlarge it cut off")
	add(flags, &s.printer, "printer", "name", "", named, "name of a printer measured with dropsheet gauge, in place "+
		"of --margin: its own margins count, and the sheets make up for what it prints too long or too short")
	add(flags, &s.asked.LapMM, "lap", "length", "10mm", aboveZero,
		"width of the overlap under the next sheet, 3mm or more")
	add(flags, &s.asked.Orientation, "orientation", "auto|portrait|landscape", "auto", layout.ParseOrientation,
		"how the paper lies: auto (fewest sheets), portrait or landscape")
	add(flags, &s.asked.LightFrom, "light-from", "corner", "top-left", layout.ParseCorner,
		"corner of the board that faces the lamp: top-left, top-right, bottom-left or bottom-right")
	s.camera.register(flags, true)
	add(flags, &s.sharpToPx, "sharp-to", "pixels", "2", number(0, maxSharpToPx),
		"largest blur that still counts as sharp, in pixels of the frame")
	flags.BoolVar(&s.asked.Level, "level", false, "print darker where the lamps give more light, so that the board "+
		"comes out even; needs --lamp")
	flags.BoolVar(&s.asked.Inches, "inches", false, "tell lengths in inches too, to a sixteenth, as is done anyway where "+
		"the paper is named in inches")
	addLimits(flags, &s.limits)
	s.again.register(flags)
}

// read is the setup that the words come to, all but the picture's proportions.
func (s *setup) read() (layout.Setup, error) {
	out := s.asked
	s.picture.apply(&out)
	out.MarginMM, out.Margins = s.margin.allMM, s.margin.each
	out.Drop.Index, out.Material = s.material.Index, s.material.Name
	if out.Drop.WallMM > 0 {
		out.Drop.WallIndex, out.WallOf = s.wall.Index, s.wall.Name
	} else if s.flags.Changed("wall-of") {
		return layout.Setup{}, job.WrongWords(errors.New("--wall-of says what a tube's wall is made of\n" +
			"hint: say with --wall how thick it is"))
	}
	g, err := s.camera.setup()
	if err != nil {
		return layout.Setup{}, err
	}
	out.Camera, out.CameraMM, out.Lamps, out.Shooting = g.camera, g.cameraMM, g.lamps, g.shooting
	out.Shooting.NozzleMM, out.Shooting.JetMM = s.nozzleMM, s.jetMM
	if out.Drop.DiameterMM, err = s.dropMM(); err != nil {
		return layout.Setup{}, job.WrongWords(err)
	}
	out.Camera.SharpToPx = s.sharpToPx
	s.rod(&out)
	if err := s.hanging(&out); err != nil {
		return layout.Setup{}, job.WrongWords(err)
	}
	if !s.flags.Changed("printer") {
		return out, nil
	}
	if s.flags.Changed("margin") {
		return layout.Setup{}, job.WrongWords(errors.New("--printer brings the margins that were measured, and --margin " +
			"others\nhint: give one of them"))
	}
	if s.fromJob["printer"] { // as it was read then
		out.Printer = s.again.of.Backdrop.Printer
		return out, nil
	}
	out.Printer, err = keptPrinter(s.printer)
	return out, err
}

// rod gives a rod what it needs unless other words were given: a straight picture, since a bulged one can't be read in
// it, and a camera so far off that the rod fits the frame.
func (s *setup) rod(out *layout.Setup) {
	if !out.Drop.Body.Rod() {
		return
	}
	if !s.flags.Changed("look") {
		out.Look = layout.Straight
	}
	if !s.flags.Changed("camera-distance") && !s.flags.Changed("frame-width") {
		out.CameraMM = max(out.CameraMM, out.Camera.HoldsFromMM(out.Drop))
	}
}

// What a hanging drop is unless other words were given: one that hangs well from a needle of that width.
const (
	usualHangingMM = 3.0
	usualHeldMM    = 2.0
)

// hanging gives a hanging drop what it needs unless other words were given: a width, or that of its volume, a holder,
// how its liquid holds together, and a straight picture, since a bulged one comes out long in it.
func (s *setup) hanging(out *layout.Setup) (err error) {
	if out.Drop.Body != flip.Hanging {
		return nil
	}
	if !s.flags.Changed("look") {
		out.Look = layout.Straight
	}
	if !s.flags.Changed("held") {
		out.Drop.HeldMM = usualHeldMM
	}
	out.Drop.CapillaryMM = s.material.Liquid.CapillaryMM()
	switch {
	case s.flags.Changed("drops-per-ml"):
		const mm3PerML = 1000
		out.Drop.DiameterMM, err = flip.HangingWidthMM(mm3PerML/s.dropsPerML, out.Drop.HeldMM, out.Drop.CapillaryMM)
	case !s.flags.Changed("drop"):
		out.Drop.DiameterMM = usualHangingMM
	}
	return err
}

// dropMM is the drop's diameter, by the flag that tells it.
func (s *setup) dropMM() (float64, error) {
	var given []string
	for _, name := range []string{"drop", "drops-per-ml", "nozzle", "jet"} {
		if s.flags.Changed(name) {
			given = append(given, "--"+name)
		}
	}
	switch {
	case s.asked.Drop.Body == flip.Hanging && (s.flags.Changed("nozzle") || s.flags.Changed("jet")):
		return 0, errors.New("--nozzle and --jet are for drops that fall\n" +
			"hint: give a hanging drop's width (--drop), or how many make a millilitre (--drops-per-ml)")
	case len(given) > 1:
		return 0, fmt.Errorf("%s each say how large the drop is\nhint: give one of them", strings.Join(given, " and "))
	case s.dropsPerML > 0:
		return flip.DiameterFromDropsPerMLMM(s.dropsPerML), nil
	case s.nozzleMM > 0:
		return motion.NozzleDropMM(s.nozzleMM, s.material.Liquid)
	case s.jetMM > 0:
		train, err := motion.JetTrain(s.jetMM, s.material.Liquid)
		return train.DropMM, err
	}
	return s.asked.Drop.DiameterMM, nil
}

// materialNames lists the materials that have a name.
func materialNames() string {
	var names []string
	for _, m := range flip.Materials() {
		names = append(names, m.Name)
	}
	return strings.Join(names, ", ")
}
