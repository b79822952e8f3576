package ask

import (
	"errors"

	"github.com/spf13/pflag"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
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
	Film  string // the folder that a film goes to in place of a proof; empty for none
	Force bool
}

// Register adds the words to a set of flags.
func (p *Proof) Register(flags *pflag.FlagSet) {
	p.whatIf.register(flags)
	p.shown.register(flags)
	p.jobArtwork.register(flags)
	add(flags, &p.Out, "out", "file", "", named, "file to write (default: proof-trial.png in the job's folder)")
	add(flags, &p.Film, "film", "folder", "", named, "render the drop's passage in place of one frame: pictures of all "+
		"its frames and a film of them, into a new folder, or on in one that was stopped")
	flags.BoolVar(&p.Force, "force", false, "replace the file if it exists, or the film of other words in the folder")
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
	return plan, p.checkFilm(plan)
}

// checkFilm refuses a film of which too little is known.
func (p *Proof) checkFilm(plan layout.Plan) error {
	if p.Film == "" {
		return nil
	}
	_, moves := plan.Shooting.DropSpeedMMPerS()
	switch {
	case p.Out != "":
		return job.WrongWords(errors.New("--film names the folder for all of a film, and --out the file of one frame\n" +
			"hint: give one of them"))
	case plan.Drop.Body == flip.Hanging:
		return job.WrongWords(errors.New("a hanging drop stands still\nhint: leave out --film, which is for drops that fall"))
	case plan.Drop.Body != flip.Ball:
		return job.WrongWords(errors.New("a rod stands still\nhint: leave out --film, which is for drops that fall"))
	case !moves:
		return job.WrongWords(errors.New("a film takes the drop's speed\nhint: say with --fall from where it falls to the " +
			"frame's middle, or how fast it is with --speed"))
	case plan.Camera.FrameRate == 0:
		return job.WrongWords(errors.New("a film takes the camera's frames a second\nhint: say --frame-rate"))
	}
	return nil
}

// Passage is the film to render of a scene that Scene gave.
func (p *Proof) Passage(scene proof.Scene) (job.Film, error) {
	passage, err := shot.Of(scene.Plan).Passage(scene.Drops)
	if err != nil {
		return job.Film{}, job.WrongWords(err)
	}
	f := job.Film{Scene: scene, Passage: passage, PlaybackFPS: scene.Plan.Shooting.Playback(), Folder: p.Film,
		Force: p.Force}
	return f, f.Check()
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
