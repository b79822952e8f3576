package job

import (
	"dropsheet/layout"
	"dropsheet/tile/artwork"
)

// Order is what a job is made of and how.
type Order struct {
	Artwork string // the picture's file, or StandardInput
	// From is a job that was read, whose artwork it is: the name and the place that the artwork had there stay. Nil for
	// an artwork by itself.
	From *Job
	// LeaveArtwork leaves it where it is; else the job keeps a copy.
	LeaveArtwork bool
	Page         int            // of an artwork that is a PDF, from 1; 0 for its only one, and for a picture
	Limits       artwork.Limits // how large it may be
	Crop         Crop           // the part of it that is the picture
	Setup        layout.Setup   // without proportions, which are those of the picture

	Seams      layout.SeamRule
	Avoid      []Avoided
	MoreSheets int // that may be taken to keep seams out of places to avoid
	// SeamsAt are seams that shall lie where they were put, whatever the rule.
	SeamsAt []layout.FixedSeam

	PPI      PPI
	Lossless bool // every pixel as it is, in place of JPEG

	GuidePaper layout.Paper // what the guide comes on; none: the usual

	Asked Asked // the words that all this was asked for with, for the job to keep

	Folder string // where the job goes
	Force  bool   // replace a job that is there
}
