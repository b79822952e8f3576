package job

import (
	"fmt"
	"math"
	"strings"

	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/proof"
)

// Brightness says how light the proofs of a plan are.
func Brightness(p layout.Plan) string {
	white, ok := shot.Of(p).RecordedWhite()
	if !ok {
		return fmt.Sprintf("brightness set so that the print's white is white; to see it as recorded, say %s",
			strings.Join(unexposed(p), " and "))
	}
	stops := math.Log2(white)
	than := "below"
	if stops > 0 {
		than = "above"
	}
	return fmt.Sprintf("as bright as recorded, by sRGB's curve: the print's white is %.2f stops %s what clips",
		math.Abs(stops), than)
}

// unexposed are the flags for what RecordedWhite misses.
func unexposed(p layout.Plan) (flags []string) {
	if p.Shooting.ISO == 0 {
		flags = append(flags, "--iso")
	}
	if _, ok := p.ShutterS(); !ok {
		flags = append(flags, "--frame-rate or --shutter")
	}
	if len(p.Lamps) == 0 {
		flags = append(flags, "--lamp")
	}
	if _, ok := p.Light().Lux(0, 0); !ok {
		flags = append(flags, "--lamp-lux")
	}
	return flags
}

// noteTones tells how much of what is as bright as recorded shows nothing.
func (w Watch) noteTones(s proof.Scene, of string, t proof.Tones) {
	if s.White > 0 {
		w.note("%.1f %% of the %s is clipped, %.1f %% is black", 100*t.ClippedShare, of, 100*t.BlackShare)
	}
}
