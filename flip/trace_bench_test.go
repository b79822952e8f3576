package flip

import "testing"

// BenchmarkTrace follows one ray through the drop to the backdrop.
func BenchmarkTrace(b *testing.B) {
	s := waterSight(5, 300, 400)
	r := s.PinholeRay(1.2, 0.9)
	t := s.Tracer()
	for b.Loop() {
		if _, ok := t.Trace(r); !ok {
			b.Fatal("the ray is lost")
		}
	}
}
