package rehearsal

import (
	"image"
	"slices"
	"sync"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job"
	"dropsheet/tile/texture"
)

// onScreen is the artwork, decoded once, or again where its transparent parts come to lie on another background, and
// the part of it that was last asked for as pictures on screen take it.
type onScreen struct {
	open       func(background layout.Surround) (*artwork.Picture, error)
	mutex      sync.Mutex
	background layout.Surround
	whole      *artwork.Picture
	err        error

	part     image.Rectangle
	surround layout.Surround
	picture  *texture.Texture
	warnings []string
}

// decoded is the artwork. The first to ask decodes it.
func (s *onScreen) decoded() (*artwork.Picture, error) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	return s.decode()
}

func (s *onScreen) decode() (*artwork.Picture, error) {
	if s.whole == nil && s.err == nil {
		s.whole, s.err = s.open(s.background)
	}
	return s.whole, s.err
}

// of is a part of the artwork for pictures on screen, on a background where there is one, and what to warn of.
func (s *onScreen) of(part image.Rectangle, background, surround layout.Surround) (*texture.Texture, []string, error) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	whole, err := s.decode()
	if err == nil && whole.Transparent && background != s.background {
		// What was decoded stays until there is another: the file may be gone by now.
		if whole, err = s.open(background); err == nil {
			s.background, s.whole, s.picture = background, whole, nil
		}
	}
	if err != nil {
		return nil, nil, err
	}
	if s.picture != nil && s.part == part && s.surround == surround {
		return s.picture, s.warnings, nil
	}
	art, err := whole.Crop(part)
	if err != nil {
		return nil, nil, err
	}
	s.picture = nil // before there are two
	picture, warnings := job.OnScreen(art, surround)
	s.part, s.surround, s.picture, s.warnings = part, surround, picture, slices.Concat(whole.Warnings, warnings)
	return s.picture, s.warnings, nil
}
