package seammap

import (
	"testing"

	"dropsheet/layout"
	"dropsheet/tile/seamsight"
)

func BenchmarkDraw(b *testing.B) {
	small, _ := layout.ParsePaper("60x90mm")
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
	}{
		{"15 sheets", func(*layout.Setup) {}},
		{"305 sheets", func(s *layout.Setup) {
			s.Paper, s.Proportions, s.DistanceMM, s.Orientation = small, 7, 200, layout.Portrait
		}},
	} {
		b.Run(c.name, func(b *testing.B) {
			s := usual()
			c.change(&s)
			p, err := s.Plan()
			if err != nil {
				b.Fatal(err)
			}
			picture := quartered(1.5)
			seams := seamsight.New(p, picture, seamMM).Seams()
			for b.Loop() {
				Draw(p, picture, seams)
			}
		})
	}
}
