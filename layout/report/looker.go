package report

import "dropsheet/layout"

// Looker is the word for what looks: a camera, or an eye in its place.
func Looker(c layout.Camera) string {
	if c.Eye {
		return "eye"
	}
	return "camera"
}

// Lens is the word for the part of it that counts.
func Lens(c layout.Camera) string {
	if c.Eye {
		return "eye"
	}
	return "lens"
}

func (r *Report) lens() string { return Lens(r.shot.Camera) }

// pupil is the word for where it looks from.
func (r *Report) pupil() string {
	if r.shot.Camera.Eye {
		return "eye's pupil"
	}
	return "lens's entrance pupil"
}
