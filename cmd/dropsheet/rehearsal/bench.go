package rehearsal

import (
	"encoding/hex"
	"encoding/json"
	"hash/fnv"
	"image"
	"strconv"
	"sync"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job"
	"dropsheet/tile/texture"
)

// Subject is what is rehearsed.
type Subject struct {
	Artwork string         // the picture's file
	From    *job.Job       // the job whose own artwork that is; nil for an artwork by itself
	Extent  job.Extent     // its size, and its page if it is a PDF
	Limits  artwork.Limits // how large it may be
	Folder  string         // where its job goes, beside which takes are kept
	Dropped bool           // it was dropped on the page, and goes when the program ends
	Words   job.Asked      // to begin with
}

// bench is the subject on the bench. Another picture may take its place.
type bench struct {
	mutex   sync.Mutex
	subject Subject
	art     *onScreen
	placed  placed
	pace    pace
	dropped *lent // the folder of the picture that was dropped on the page; nil for none
}

func newBench(s Subject) *bench {
	return &bench{subject: s, art: &onScreen{open: s.open}}
}

// open decodes the subject's picture, transparent parts on a background where there is one.
func (s Subject) open(background layout.Surround) (*artwork.Picture, error) {
	return s.Extent.Open(s.Artwork, background, s.Limits)
}

// now is what lies on the bench.
func (b *bench) now() (Subject, *onScreen) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	return b.subject, b.art
}

// set is the bench as words have it.
type set struct {
	subject Subject
	sum     string // the artwork's SHA-256
	asked   *ask.Rehearse
	order   job.Order // without a folder
	part    image.Rectangle
	plans   []layout.Plan // the ways to lay the paper; size tells of the first
	picture *texture.Texture
	notes   []string // on the artwork
}

// set sets the bench up.
func (b *bench) set(words []Word) (*set, error) {
	asked, err := read(words)
	if err != nil {
		return nil, err
	}
	subject, art := b.now()
	whole, err := art.decoded()
	if err != nil {
		return nil, err
	}
	s := &set{subject: subject, sum: hex.EncodeToString(whole.SHA256[:]), asked: asked}
	w, h := whole.Size()
	if s.order, s.part, s.plans, err = asked.Bench(subject.Artwork, w, h); err != nil {
		return nil, err
	}
	s.order.Limits = subject.Limits
	s.picture, s.notes, err = art.of(s.part, s.order.Setup.Background, s.plans[0].Backdrop.Surround)
	return s, err
}

// boardKey tells boards apart by what they show, seams and lamps left out.
func boardKey(s *set, p layout.Plan) string {
	p.Backdrop.XEdgesMM, p.Backdrop.YEdgesMM = nil, nil
	h := fnv.New64a()
	// nothing in these can fail to be encoded
	_ = json.NewEncoder(h).Encode([]any{s.sum, s.part, s.order.Setup.Background, p.Drop.Reverses, p.Picture, p.Backdrop})
	return strconv.FormatUint(h.Sum64(), 36)
}

// placed is where the seams went when they were last placed, for drafts, in which there is no time to place them.
type placed struct{ xEdges, yEdges []float64 } // as shares of the board

// keep keeps a plan's seams.
func (b *bench) keep(p layout.Plan) {
	shares := func(edges []float64) (all []float64) {
		for _, mm := range edges {
			all = append(all, mm/edges[len(edges)-1])
		}
		return all
	}
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.placed = placed{shares(p.Backdrop.XEdgesMM), shares(p.Backdrop.YEdgesMM)}
}

// roughly is a plan of even cells with its seams about where they were last placed, if the board has as many cells.
func (b *bench) roughly(p layout.Plan) layout.Plan {
	b.mutex.Lock()
	was := b.placed
	b.mutex.Unlock()
	if len(was.xEdges) != p.Backdrop.Columns+1 || len(was.yEdges) != p.Backdrop.Rows+1 {
		return p
	}
	var at []layout.FixedSeam
	for i := 1; i < p.Backdrop.Columns; i++ {
		at = append(at, layout.FixedSeam{Of: layout.ColumnSeam, No: i, AtMM: was.xEdges[i] * p.Backdrop.WidthMM})
	}
	for i := 1; i < p.Backdrop.Rows; i++ {
		at = append(at, layout.FixedSeam{Of: layout.RowSeam, No: i, AtMM: was.yEdges[i] * p.Backdrop.HeightMM})
	}
	if moved, err := p.WithSeams(layout.NoSeamCosts(p.Backdrop), nil, at...); err == nil {
		return moved.Plan
	}
	return p // sheets do not reach so far any more
}

// Check refuses words that no bench can be set up by, before anything is decoded.
func Check(s Subject) error {
	words := wordsOf(s.Words)
	asked, err := read(words)
	if err != nil {
		return err
	}
	_, _, _, err = asked.Bench(s.Artwork, s.Extent.WidthPx, s.Extent.HeightPx)
	return err
}
