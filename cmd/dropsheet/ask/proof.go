package ask

import (
	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
	"dropsheet/tile/proof"
	"dropsheet/tile/texture"
)

// Proof is what proof is asked for.
type Proof struct {
	whatIf
	shown
	jobArtwork
	Out   string
	Force bool
}

// Register adds the words to a set of flags.
func (p *Proof) Register(flags *pflag.FlagSet) {
	p.whatIf.register(flags)
	p.shown.register(flags)
	p.jobArtwork.register(flags)
	add(flags, &p.Out, "out", "file", "", named, "file to write (default: proof-trial.png in the job's folder)")
	flags.BoolVar(&p.Force, "force", false, "replace the file if it exists")
}

// Apply is the plan as the words would have it. Drops that overlap are refused, which would be one.
func (p *Proof) Apply(plan layout.Plan) (layout.Plan, error) {
	plan, err := p.whatIf.Apply(plan)
	if err != nil {
		return layout.Plan{}, err
	}
	if err := p.shown.check(plan); err != nil {
		return layout.Plan{}, err
	}
	return plan, nil
}

// Scene is what to render of a plan that Apply gave, as it is recorded: with fewer pixels than its camera has, unless
// those were asked for.
func (p *Proof) Scene(plan layout.Plan, picture *texture.Texture) proof.Scene {
	camera := plan.Camera
	if !p.flags.Changed("pixels") {
		camera = proof.Reduced(camera, job.ProofSidePx)
	}
	return p.shown.scene(plan, camera, picture)
}
