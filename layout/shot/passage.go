package shot

import (
	"errors"
	"fmt"
	"math"

	"dropsheet/flip"
	"dropsheet/flip/motion"
	"dropsheet/layout"
)

// Passage is how drops come by, frame by frame, for as long as anything of them is in the frame. One of the frames is
// exposed just as they are in their places.
type Passage struct {
	SpeedMMPerS float64 // in their places, down; below 0 rising
	FrameRate   float64
	// First and Last are its frames' numbers, counted from the one in which the drops are in their places.
	First, Last int
	// A drop swings between FlattestRatio of height over width and as long: as Shot.Swing has it. In its place it is
	// PlannedRatio, at its flattest or longest, or round and growing longer. SwingHz is 0 where it keeps that shape: of
	// a liquid that is too viscous to swing, or not known.
	PlannedRatio, FlattestRatio, SwingHz float64
}

// Moment is a frame of it, in the middle of its exposure.
type Moment struct {
	TimeS           float64 // from when the drops are in their places
	FallsMM         float64 // how far below them they are
	SpeedMMPerS     float64
	HeightOverWidth float64
}

// mostFrames bounds a passage, whose frames at both ends are looked at one by one: shown at 25 a second it runs for an
// hour.
const mostFrames = 1e5

// ErrNotKnown tells that it is not known how fast the drop is, or how many frames a second there are.
var ErrNotKnown = errors.New("a passage takes the drop's speed and the frame rate")

// Passage works it out for drops with those places in their plane, optical mm from the axis; none: one on the axis.
// They all move as one that passes the frame's middle does.
func (s Shot) Passage(drops []layout.Point) (Passage, error) {
	if s.Drop.Body == flip.Hanging {
		return Passage{}, errors.New("a hanging drop stands still, and has no passage\n" +
			"hint: take the body ball for one that falls")
	}
	speed, ok := s.Shooting.DropSpeedMMPerS()
	if !ok || s.Camera.FrameRate == 0 {
		return Passage{}, ErrNotKnown
	}
	p := Passage{SpeedMMPerS: speed, FrameRate: s.Camera.FrameRate, PlannedRatio: 1, FlattestRatio: s.flattest()}
	if s.Drop.HeightOverWidth != 0 {
		p.PlannedRatio = s.Drop.HeightOverWidth
	}
	p.SwingHz, _ = s.falling().SwingHz()

	longest := s.Plan.Swung(p.PlannedRatio)
	if p.SwingHz > 0 {
		longest = s.Plan.Swung(1 / p.FlattestRatio)
	}
	_, halfHeightMM := longest.Sight().OutlineMM()
	highestMM, lowestMM := 0.0, 0.0
	for i, at := range drops {
		if i == 0 {
			highestMM, lowestMM = at.YMM, at.YMM
		}
		highestMM, lowestMM = min(highestMM, at.YMM), max(lowestMM, at.YMM)
	}
	reachMM := s.Camera.FrameHeightMM/2 + halfHeightMM
	fromS, toS, ok := motion.ViewS(speed, reachMM+lowestMM, reachMM-highestMM)
	if !ok {
		return Passage{}, errors.New("the drop never comes into the frame\n" +
			"hint: give a place nearer to the axis, or a speed " +
			"that brings it there")
	}
	first, last := math.Ceil(fromS*p.FrameRate), math.Floor(toS*p.FrameRate)
	switch {
	case last < first:
		return Passage{}, fmt.Errorf("at %g frames a second the drop passes between two of them\nhint: give a higher rate",
			p.FrameRate)
	case last-first >= mostFrames:
		return Passage{}, fmt.Errorf("at %g frames a second the drop is in the frame for over %g of them\n"+
			"hint: give a lower rate", p.FrameRate, mostFrames)
	}
	p.First, p.Last = int(first), int(last)
	// At its ends the drop may not be as long as that.
	shows := func(m Moment) bool {
		_, halfHeightMM := s.Plan.Swung(m.HeightOverWidth).Sight().OutlineMM()
		reachMM := s.Camera.FrameHeightMM/2 + halfHeightMM
		return lowestMM+m.FallsMM >= -reachMM && highestMM+m.FallsMM <= reachMM
	}
	for p.First < p.Last && !shows(p.At(0)) {
		p.First++
	}
	for p.First < p.Last && !shows(p.At(p.Frames()-1)) {
		p.Last--
	}
	return p, nil
}

// Frames is how many there are.
func (p Passage) Frames() int { return p.Last - p.First + 1 }

// At is a frame of it, counted from 0.
//
// The logarithm of height over width swings as a cosine: in a swing of the second mode both axes do, the height twice
// as far as the width the other way (Rayleigh 1879), so that is so up to the square of how far. While the drop is in
// view it is taken not to calm down.
func (p Passage) At(frame int) Moment {
	timeS := float64(p.First+frame) / p.FrameRate
	m := Moment{timeS, motion.PlaceMM(p.SpeedMMPerS, timeS), p.SpeedMMPerS + motion.GravityMMPerS2*timeS, p.PlannedRatio}
	if p.SwingHz > 0 {
		phase := 2 * math.Pi * p.SwingHz * timeS
		if p.PlannedRatio == 1 {
			m.HeightOverWidth = math.Pow(p.FlattestRatio, -math.Sin(phase))
		} else {
			m.HeightOverWidth = math.Pow(p.PlannedRatio, math.Cos(phase))
		}
	}
	return m
}
