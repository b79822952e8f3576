package shot

import "dropsheet/layout"

// Shot is a plan before its camera. Its methods work out what the camera gets.
type Shot struct{ layout.Plan }

// Of is the shot of a plan.
func Of(p layout.Plan) Shot { return Shot{p} }

// tolerance is what rounding may make of a length, in mm.
const tolerance = 1e-6
