package ask

import (
	"image"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job"
	"dropsheet/tile/proof"
	"dropsheet/tile/texture"
)

// Rehearse is what rehearse is asked for: all that a job is made with, and what a proof shows besides.
type Rehearse struct {
	made
	shown
}

// Register adds the words to a set of flags.
func (r *Rehearse) Register(flags *pflag.FlagSet) {
	r.made.register(flags)
	r.shown.register(flags)
}

// Asked are the words that were given.
func (r *Rehearse) Asked() job.Asked { return asked(r.flags) }

// OtherArtwork is the picture that was named in place of a job's own; empty for none.
func (r *Rehearse) OtherArtwork() string { return r.again.artwork }

// Page is the page that is asked for of a PDF; 0 for its only one.
func (r *Rehearse) Page() int { return r.picture.page }

// Limits are how large an artwork may be.
func (r *Rehearse) Limits() artwork.Limits { return r.limits }

// Bench is what the words come to for an artwork of that size, upright: an order for its job without a folder, the part
// of the artwork that is the picture, and the ways to lay the paper, the first of which is what size tells of.
func (r *Rehearse) Bench(artwork string, widthPx, heightPx int) (job.Order, image.Rectangle, []layout.Plan, error) {
	order, err := r.order()
	if err != nil {
		return order, image.Rectangle{}, nil, err
	}
	order.Artwork = artwork
	part, err := order.Crop.Pixels(widthPx, heightPx)
	if err != nil {
		return order, part, nil, err
	}
	order.Setup.Proportions = float64(part.Dx()) / float64(part.Dy())
	plans, err := order.Setup.Plans()
	if err != nil {
		return order, part, nil, job.WrongWords(err)
	}
	for i, p := range plans {
		plans[i] = layout.Rounded(p) // to the figures that a job keeps
	}
	return order, part, plans, r.shown.check(plans[0])
}

// Scene is what to render of a plan that Bench gave, as it is recorded.
func (r *Rehearse) Scene(plan layout.Plan, picture *texture.Texture) proof.Scene {
	return r.shown.scene(plan, plan.Camera, picture)
}
