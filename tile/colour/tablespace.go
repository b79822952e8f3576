package colour

// identity is the matrix that changes nothing.
var identity = [3][3]float32{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}

// tableSpace reads a profile that goes by tables; nil for any other.
func tableSpace(profile []byte, grey bool) (*Space, error) {
	components := 3
	if grey {
		components = 1
	}
	of, err := deviceTable(profile, components)
	if of == nil || err != nil {
		return nil, err
	}
	if !grey {
		return &Space{table: bake(of), ToSRGB: identity}, nil
	}
	// Of grey only how light it is: its pictures have one channel.
	var tone [256]float32
	for level := range tone {
		tone[level] = float32(share(of.of([]float64{float64(level) / 255})[1]))
	}
	return &Space{tones: [3][256]float32{tone, tone, tone}, ToSRGB: identity}, nil
}
