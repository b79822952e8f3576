package rehearsal

import (
	"context"
	"image"

	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// boardRecord is followed by the board's pixels as it hangs, seen from its printed side, without seams: as a frame's.
type boardRecord struct {
	head
	Board    string `json:"board"` // its name
	WidthPx  int    `json:"width_px"`
	HeightPx int    `json:"height_px"`
}

// boardSidePx is the longer side of the board's picture.
const boardSidePx = 480

// writeBoard draws the board and writes it.
func (r *records) writeBoard(ctx context.Context, p layout.Plan, s *set, key string) {
	m := drawBoard(ctx, p, s.picture)
	r.write(boardRecord{head{"board", len(m.Pix)}, key, m.Rect.Dx(), m.Rect.Dy()}, m.Pix)
}

// drawBoard is what hangs on the board, evenly lit.
func drawBoard(ctx context.Context, p layout.Plan, picture *texture.Texture) *image.RGBA {
	b := p.Backdrop
	mm := max(b.WidthMM, b.HeightMM) / boardSidePx
	m := image.NewRGBA(image.Rect(0, 0, max(1, int(b.WidthMM/mm)), max(1, int(b.HeightMM/mm))))
	p.LevelledFor = nil
	surface := board.New(p, picture)
	paper := texture.Light{board.PaperWhite, board.PaperWhite, board.PaperWhite}
	texture.Rows(m.Rect.Dy(), func(y int) {
		for x := 0; x < m.Rect.Dx() && ctx.Err() == nil; x++ {
			seen := surface.At((float64(x)+0.5)*mm, (float64(y)+0.5)*mm, board.Box(mm, mm))
			m.SetRGBA(x, y, seen.Under(1, paper, board.Room).SRGB())
		}
	})
	return m
}
