package paint

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
)

// WriteJPEG puts the picture in place whole or not at all, at a JPEG quality of 1 to 100. Its errors name the file.
func WriteJPEG(out string, img image.Image, quality int) (err error) {
	var data bytes.Buffer // encoded before the file is opened, so that stopping the long part leaves nothing behind
	if err := jpeg.Encode(&data, img, &jpeg.Options{Quality: quality}); err != nil {
		return fmt.Errorf("%q can't be encoded: %w", out, err)
	}
	file, err := os.CreateTemp(filepath.Dir(out), ".draw-*.jpg")
	if err != nil {
		return fmt.Errorf("%q can't be written: %w", out, err)
	}
	defer func() {
		if err != nil {
			file.Close()
			os.Remove(file.Name())
			err = fmt.Errorf("%q can't be written: %w", out, err)
		}
	}()
	if _, err = file.Write(data.Bytes()); err != nil {
		return err
	}
	if err = file.Chmod(0o644); err != nil {
		return err
	}
	if err = file.Close(); err != nil {
		return err
	}
	return os.Rename(file.Name(), out)
}
