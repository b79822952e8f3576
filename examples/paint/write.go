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
func WriteJPEG(out string, img image.Image, quality int) error {
	var data bytes.Buffer // encoded before the file is opened, so that stopping the long part leaves nothing behind
	if err := jpeg.Encode(&data, img, &jpeg.Options{Quality: quality}); err != nil {
		return fmt.Errorf("%q can't be encoded: %w", out, err)
	}
	return WriteFile(out, data.Bytes())
}

// WriteFile puts a file in place whole or not at all. Its errors name the file.
func WriteFile(out string, data []byte) (err error) {
	file, err := os.CreateTemp(filepath.Dir(out), ".draw-*"+filepath.Ext(out))
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
	if _, err = file.Write(data); err != nil {
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
