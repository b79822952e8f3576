package job

import (
	"crypto/sha256"
	"encoding/hex"
	"io"

	"dropsheet/tile/job/place"
	"dropsheet/tile/readfile"
)

// fileSums are the SHA-256 of the files that make writes besides the job file, by name. The copy is known: its pixels
// are those that were decoded.
func (m *making) fileSums() (map[string]string, error) {
	copied := m.job.Artwork.Copy
	sums := map[string]string{}
	if copied != "" {
		sums[copied] = m.job.Artwork.SHA256
	}
	for _, name := range m.job.FileNames() {
		if name == place.JobFile || name == copied {
			continue
		}
		sum, err := fileSum(m.folder.File(name))
		if err != nil {
			return nil, err
		}
		sums[name] = sum
	}
	return sums, nil
}

// fileSum is the SHA-256 of a regular file, in hexadecimal.
func fileSum(path string) (string, error) {
	f, _, err := readfile.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}
