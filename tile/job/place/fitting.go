package place

import (
	"crypto/sha256"
	"encoding/hex"
	"path/filepath"
	"unicode/utf8"
)

// longestName is how many bytes a name may have: ext4, XFS, Btrfs and APFS take 255, NTFS and exFAT 255 letters (from
// memory).
const longestName = 255

// Fitting is a name that begins with stem, as far as file systems have room for it, and ends with end.
func Fitting(stem, end string) string {
	most := longestName - len(end)
	if len(stem) <= most {
		return stem + end
	}
	for most > 0 && !utf8.RuneStart(stem[most]) {
		most--
	}
	return stem[:most] + end
}

// unfinished is the hidden name of what becomes path. One that has to be cut ends with a hash, which tells it from
// others that begin so.
func unfinished(path string) string {
	folder, base := filepath.Dir(path), filepath.Base(path)
	end := unfinishedSuffix
	if len(".")+len(base)+len(end) > longestName {
		sum := sha256.Sum256([]byte(base))
		end = "-" + hex.EncodeToString(sum[:8]) + end
	}
	return filepath.Join(folder, Fitting("."+base, end))
}
