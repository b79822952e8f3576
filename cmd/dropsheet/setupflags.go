package main

import (
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/job"
)

// setupFlags are the flags that size and make share.
type setupFlags struct {
	maxPixels int
	layout.Setup
	flags      *pflag.FlagSet
	camera     cameraFlags
	material   flip.Material
	dropsPerML float64
	sharpToPx  float64
	picture    pictureFlags
	printer    string
}

// Bounds of numbers without a unit.
const (
	maxDropsPerML = 1e6 // a mist
	maxFrameRate  = 1e9
	maxSharpToPx  = 1e6
)

// register adds the flags, with their defaults.
func (s *setupFlags) register(flags *pflag.FlagSet) {
	s.flags = flags
	add(flags, &s.Drop.Body, "body", "shape", "ball", flip.ParseBody,
		"what refracts: ball (a falling drop), upright-rod or level-rod (a glass or tube of liquid)")
	add(flags, &s.Drop.DiameterMM, "drop", "length", "5mm", aboveZero, "diameter of the drop or rod")
	add(flags, &s.dropsPerML, "drops-per-ml", "number", "", number(0, maxDropsPerML),
		"size of the drop by how many make a millilitre, in place of --drop; a dropper's usual figure is 20")
	add(flags, &s.Drop.HeightOverWidth, "oblate", "ratio", "", within(0.8, 1.2),
		"height of a ball over its width, 0.8 to 1.2: below 1 pressed flat, above 1 drawn long, its volume still that of "+
			"--drop (default: round)")
	add(flags, &s.material, "liquid", "name|index", "water", flip.ParseMaterial, "what the drop or rod is made of: "+
		materialNames()+", or a refractive index above 1")
	add(flags, &s.DistanceMM, "distance", "length", "", aboveZero,
		"from the drop's centre to the backdrop (default 200mm, or what print size and fill ask for)")
	add(flags, &s.CameraMM, "camera-distance", "length", "300mm", aboveZero,
		"from the lens (its entrance pupil) to the drop's centre")
	add(flags, &s.Fill, "fill", "share", "", number(0, 1), "share of the drop's visible radius that the picture takes "+
		"up, above 0 and below 1 (default 0.85, or what print size and distance give)")
	add(flags, &s.Fit, "fit", "cover|inside", "cover", layout.ParseFit,
		"cover: the picture fills the drop as far as --fill, and is cut there; inside: all of it shows within --fill; a "+
			"rod is filled from side to side by both")
	s.picture.register(flags)
	add(flags, &s.Print, "print-size", "WxH", "", sizeMM, "size of the printed picture, such as 900x600mm; any two of "+
		"distance, print size and fill give the third")
	add(flags, &s.Surround, "surround", "colour|stretch", "", layout.ParseSurround,
		"fill the board beyond the picture, with a colour such as #203040 or navy, or by stretch, which carries the "+
			"picture's edge on (default: the board ends with the picture)")
	add(flags, &s.SurroundSize, "surround-size", "WxH", "", sizeMM,
		"size of the board with its surround, the picture in the middle (default: what fills the frame)")
	add(flags, &s.TravelMM, "travel", "length", "", aboveZero, "how far off the axis the drop may fall, up, down or "+
		"sideways, up to 1m: tells what of the picture then stays free of the dark rim")
	add(flags, &s.MaxSheets, "max-sheets", "N", "", wholeFromOne,
		"at most that many sheets, up to 10000 (500 unless given); in place of --print-size it finds the largest print "+
			"that they hold")
	add(flags, &s.Paper, "paper", "name|WxH", "A4", layout.ParsePaper, "what to print on: "+layout.PapersTaken)
	add(flags, &s.MarginMM, "margin", "length", "5mm", zeroOrMore,
		"what the printer can't reach along each edge of the paper, 0mm or more")
	add(flags, &s.printer, "printer", "name", "", named, "name of a printer measured with dropsheet gauge, in place "+
		"of --margin: its own margins count, and the sheets make up for what it prints too long or too short")
	add(flags, &s.LapMM, "lap", "length", "10mm", aboveZero, "width of the strip that the next sheet is pasted over, "+
		"3mm or more")
	add(flags, &s.Orientation, "orientation", "way", "auto", layout.ParseOrientation,
		"how the paper lies: auto (fewest sheets), portrait or landscape")
	add(flags, &s.LightFrom, "light-from", "corner", "top-left", layout.ParseCorner,
		"corner of the board that faces the lamp: top-left, top-right, bottom-left or bottom-right")
	s.camera.register(flags, true)
	add(flags, &s.sharpToPx, "sharp-to", "pixels", "2", number(0, maxSharpToPx),
		"blur that passes for sharp, a diameter in pixels of the frame")
	addMaxPixels(flags, &s.maxPixels)
}

// setup is what the flags ask for, all but the picture's proportions.
func (s *setupFlags) setup() (layout.Setup, error) {
	if s.flags.Changed("drop") && s.flags.Changed("drops-per-ml") {
		return layout.Setup{}, job.WrongWords(errors.New("--drop and --drops-per-ml both say how large the drop is: give " +
			"one of them"))
	}
	out := s.Setup
	s.picture.apply(&out)
	if s.dropsPerML > 0 {
		out.Drop.DiameterMM = flip.DiameterFromDropsPerMLMM(s.dropsPerML)
	}
	out.Drop.Index, out.Material = s.material.Index, s.material.Name
	var err error
	if out.Camera, out.Lamps, err = s.camera.setup(); err != nil {
		return layout.Setup{}, err
	}
	out.Camera.SharpToPx = s.sharpToPx
	if !s.flags.Changed("printer") {
		return out, nil
	}
	if s.flags.Changed("margin") {
		return layout.Setup{}, job.WrongWords(errors.New("--printer brings the margins that were measured, and --margin " +
			"others: give one of them"))
	}
	out.Printer, err = keptPrinter(s.printer)
	return out, err
}

// addPPI registers the print resolution, which only a print has.
func addPPI(flags *pflag.FlagSet, into *job.PPI) {
	add(flags, into, "ppi", "number|auto", fmt.Sprint(shot.DefaultPPI), func(s string) (job.PPI, error) {
		if s == "auto" {
			return job.PPI{Auto: true}, nil
		}
		most, err := number(0, job.MaxPPI)(s)
		if err != nil {
			return job.PPI{}, fmt.Errorf("%q can't be taken: write auto, or a plain number above 0 and below %d", s, job.MaxPPI)
		}
		return job.PPI{Most: most}, nil
	}, "the most pixels printed to the inch, or auto: as many as the frame can use, up to 300; a coarser picture "+
		"keeps its own pixels")
}
