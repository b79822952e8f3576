package report

import "dropsheet/layout"

// What hands do with knife and paste, as standard deviations, mm (common practice, no source).
const (
	cutOffMM   = 0.3 // how far a cut lies off its line
	pasteOffMM = 0.4 // how far a sheet lies off where it was meant to lie
)

// What comes of it where the pencil grid decides, the ticks check and a difference is split: nineteen in twenty are
// off by no more, mm. A simulation of thousands of boards gives these figures, and the test that holds them tells more.
const (
	gapMM   = 0.6 // of a seam: a strip shown twice, or not at all
	slideMM = 1.0 // of the picture, along a seam
	rimMM   = 0.9 // of the board's outer edge
)

// splitMM is how far ticks and grid may disagree before something was measured wrong: far out of what hands are off by.
const splitMM = 1.0

// wetGrowth is what paper grows by when it is pasted wet, at most, as a share (common practice, no source).
const wetGrowth = 0.003

// grows tells what pasting does to the paper.
func (r *Report) grows() Fact {
	b := r.shot.Backdrop
	if p := b.Printer; p != nil && p.Growth != (layout.Growth{}) {
		return Fact{Key: "build.grows", Text: say("pasted and dry, this paper comes out %s across and %s along the "+
			"feed, and the sheets make up for that: as printed they are off by as much the other way",
			PercentOff(p.Growth.Across),
			PercentOff(p.Growth.Feed))}
	}
	longest := 0.0
	for _, s := range r.shot.Sheets {
		longest = max(longest, s.Cell.WidthMM, s.Cell.HeightMM)
	}
	return Fact{Key: "build.grows", Text: say("pasted wet, paper grows, more across its grain than along: some %s "+
		"(common practice, no source), %s on a sheet here", Share(wetGrowth), Length(wetGrowth*longest))}
}

// handwork tells how a sheet is laid, and how well that comes out.
func (r *Report) handwork() []Fact {
	if len(r.shot.Sheets) == 1 {
		return nil
	}
	return []Fact{
		{Key: "build.measure", Text: say("where that is out by more than %s, measure again: a pencil line, a cut "+
			"or the sheet before is wrong", strong(Length(splitMM)))},
		{Key: "build.split", Text: say("where it is out by less, or still is, split it: move the sheet half of the way")},
		{Key: "build.expect", Text: say("laid so, nineteen seams in twenty are out by no more than %s, the picture "+
			"steps along them by no more than %s, and the outer edge is even to %s, however many sheets there are",
			strong(Length(gapMM)),
			Length(slideMM), Length(rimMM))},
		{Key: "build.hands", Text: say("that is for cuts off by %s and sheets laid off by %s, as standard deviations "+
			"(common practice, no source), by simulation", Length(cutOffMM), Length(pasteOffMM))},
	}
}
