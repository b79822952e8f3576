package main

import (
	"errors"

	"github.com/spf13/pflag"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
)

// setupFlags are the flags that size and make share.
type setupFlags struct {
	layout.Setup
	flags      *pflag.FlagSet
	material   flip.Material
	dropsPerML float64
	pixels     pair
}

// Bounds of numbers without a unit.
const (
	maxDropsPerML = 1e6 // a mist
	maxPPI        = 4800
	maxFrameRate  = 1e9
)

// register adds the flags, with their defaults.
func (s *setupFlags) register(flags *pflag.FlagSet) {
	s.flags = flags
	add(flags, &s.Drop.Body, "body", "shape", "ball", flip.ParseBody, "what refracts: ball (a falling drop), upright-rod or level-rod (a glass or tube of liquid)")
	add(flags, &s.Drop.DiameterMM, "drop", "length", "5mm", aboveZero, "diameter of the drop or rod")
	add(flags, &s.dropsPerML, "drops-per-ml", "number", "", number(0, maxDropsPerML), "the drop's size by how many make a millilitre, in place of --drop; 20 is the dispenser's usual figure")
	add(flags, &s.material, "liquid", "name|index", "water", flip.ParseMaterial, "what it is made of: "+materialNames()+", or a refractive index above 1")
	add(flags, &s.DistanceMM, "distance", "length", "", aboveZero, "drop centre to backdrop (default 200mm, or what print size and fill ask for)")
	add(flags, &s.CameraMM, "camera-distance", "length", "300mm", aboveZero, "lens entrance pupil to drop centre")
	add(flags, &s.Fill, "fill", "share", "", number(0, 1), "share of the drop's visible radius that the picture takes up, above 0 and below 1 (default 0.85, or what print size and distance give)")
	add(flags, &s.Fit, "fit", "cover|inside", "cover", layout.ParseFit, "cover: the picture's shorter half-side equals the reach; inside: its half-diagonal does")
	add(flags, &s.Print, "print-size", "WxH", "", sizeMM, "the finished backdrop, such as 900x600mm; any two of distance, print size and fill give the third")
	add(flags, &s.MaxSheets, "max-sheets", "N", "", wholeFromOne, "at most that many sheets; in place of a print size it finds the largest print that they hold")
	add(flags, &s.Paper, "paper", "name|WxH", "A4", layout.ParsePaper, "what to print on: "+layout.PapersTaken)
	add(flags, &s.MarginMM, "margin", "length", "5mm", zeroOrMore, "what the printer can't reach along each edge of the paper, 0mm or more")
	add(flags, &s.LapMM, "lap", "length", "10mm", aboveZero, "strip of a sheet that its neighbour is pasted over, 3mm or more")
	add(flags, &s.Orientation, "orientation", "way", "auto", layout.ParseOrientation, "how the paper lies: auto (fewest sheets), portrait or landscape")
	add(flags, &s.LightFrom, "light-from", "corner", "top-left", layout.ParseCorner, "corner of the board that faces the lamp: top-left, top-right, bottom-left or bottom-right")
	s.registerCamera(flags)
}

// registerCamera adds the flags of the camera and the lamps.
func (s *setupFlags) registerCamera(flags *pflag.FlagSet) {
	add(flags, &s.Camera.Sensor, "sensor", "WxH", "36x24mm", sizeMM, "the camera's sensor")
	add(flags, &s.pixels, "pixels", "WxH", "6000x4000", pixels, "the frame's pixels")
	add(flags, &s.Camera.LensMM, "lens", "length", "100mm", aboveZero, "focal length of the lens")
	add(flags, &s.Camera.FrameWidthMM, "frame-width", "length", "", aboveZero, "width that the frame sees at the drop, in place of --lens; a ruler held there reads it")
	add(flags, &s.Camera.FNumber, "aperture", "f/N", "f/16", fNumber, "stop of the lens")
	add(flags, &s.Camera.Focus, "focus", "point", "best", layout.ParseFocus, "what is in focus: edge (of the drop), picture (its image in the drop) or best (between them)")
	add(flags, &s.Camera.FrameRate, "frame-rate", "number", "", number(0, maxFrameRate), "frames a second")
	flags.Var(&lampsValue{&s.Lamps}, "lamp", "where a lamp stands from the backdrop's centre: right, down, toward the camera, such as -60cm,-40cm,90cm; repeatable (default: lit evenly)")
}

// setup is what the flags ask for, all but the picture's proportions.
func (s *setupFlags) setup() (layout.Setup, error) {
	given := s.flags.Changed
	switch {
	case given("drop") && given("drops-per-ml"):
		return layout.Setup{}, wrongWords{errors.New("--drop and --drops-per-ml both say how large the drop is: give one of them")}
	case given("lens") && given("frame-width"):
		return layout.Setup{}, wrongWords{errors.New("--lens and --frame-width both say how much the frame sees: give one of them")}
	}
	out := s.Setup
	if s.dropsPerML > 0 {
		out.Drop.DiameterMM = flip.DiameterFromDropsPerMLMM(s.dropsPerML)
	}
	if given("frame-width") {
		out.Camera.LensMM = 0
	}
	out.Drop.Index = s.material.Index
	out.Camera.WidthPx, out.Camera.HeightPx = s.pixels.w, s.pixels.h
	return out, nil
}

// addPPI registers the print resolution, which only a print has.
func addPPI(flags *pflag.FlagSet, into *float64) {
	add(flags, into, "ppi", "number", "300", number(0, maxPPI), "the most pixels printed to the inch; a coarser picture keeps its own pixels")
}

// finest is the resolution for a number of pixels to the inch.
func finest(ppi float64) units.Resolution { return units.PerInch(ppi) }
