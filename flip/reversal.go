package flip

// Reversal says which axes of the backdrop a drop shows the other way round.
type Reversal string

// The reversals, spelled as a job file spells them.
const (
	ReversesBoth Reversal = "both" // a ball: half a turn, no mirroring
	ReversesX    Reversal = "x"    // an upright rod: left and right
	ReversesY    Reversal = "y"    // a level rod: up and down
	ReversesNone Reversal = "none" // a backdrop too close to be inverted
)

// Reverses says how the drop shows the middle of its backdrop.
func (s Sight) Reverses() Reversal {
	nearestMM, ok := s.NearestInvertingMM()
	if !ok || s.DistanceMM <= nearestMM {
		return ReversesNone
	}
	switch x, y := s.Drop.bends(); {
	case x && y:
		return ReversesBoth
	case x:
		return ReversesX
	default:
		return ReversesY
	}
}

// Turn is how a picture must be laid on the backdrop so that the drop shows it upright. Reversing twice is nothing.
func (r Reversal) Turn() Turn {
	return Turn{
		ReverseX: r == ReversesBoth || r == ReversesX,
		ReverseY: r == ReversesBoth || r == ReversesY,
	}
}
