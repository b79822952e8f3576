package place

import (
	"path/filepath"
	"slices"
	"strings"
)

// MostJobBytes bounds a job file: 100,000 sheets take under 30 MB.
const MostJobBytes = 64 << 20

// JobFile is what the job file is called in a job's folder.
const JobFile = "job.json"

// CloseUpFile is what the close-up of the drop is called there. Jobs that an older program made have none.
const CloseUpFile = "closeup.png"

// RaysFile is what the page of rays across a rod is called there.
const RaysFile = "rays.pdf"

// madeFiles are what make writes, whatever the job.
var madeFiles = []string{"sheets.pdf", "guide.pdf", "proof.png", CloseUpFile, "seams.png", JobFile}

// Files is what a job's folder is made of; reprints and trials come beside them. copy is what the artwork's copy is
// called there, empty for none; rays tells whether it has a page of rays.
func Files(copy string, rays bool) []string {
	files := slices.Clone(madeFiles)
	if rays {
		files = append(files, RaysFile)
	}
	if copy != "" {
		files = append(files, copy)
	}
	return files
}

// CopyName is what the copy of an artwork is called in a job's folder: it keeps what its name ends in, if that is
// nothing strange.
func CopyName(artwork string) string {
	const base, longest = "artwork", 8
	end := filepath.Ext(artwork)
	if len(end) < 2 || len(end) > 1+longest {
		return base
	}
	for _, c := range end[1:] {
		if !('a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || '0' <= c && c <= '9') {
			return base
		}
	}
	return base + end
}

// IsCopyName tells whether a copy may be called so.
func IsCopyName(name string) bool { return name == CopyName(name) }

// keptFiles are those of a job's files that are only replaced with the whole job. A proof or a seam map may be
// replaced by a trial.
var keptFiles = []string{JobFile, "sheets.pdf", "guide.pdf"}

// isKept tells whether a file is one of them, or the copy of the artwork beside a job.
func isKept(path string) bool {
	folder, name := filepath.Split(path)
	return slices.Contains(keptFiles, name) || IsCopyName(name) && there(filepath.Join(folder, JobFile))
}

// besidePatterns match what is written into a job's folder later: reprints and trials.
var besidePatterns = []string{"reprint-*.pdf", "proof-*.png", "seams-*.png"}

// isOurs tells whether a file of that name in a job's folder is dropsheet's, but for the artwork's copy.
func isOurs(name string) bool {
	return slices.Contains(madeFiles, name) || name == RaysFile || IsUnfinished(name) || isBeside(name)
}

// isBeside tells whether a file of that name is written into a job's folder later.
func isBeside(name string) bool {
	return slices.ContainsFunc(besidePatterns, func(pattern string) bool {
		match, _ := filepath.Match(pattern, name) // the patterns are well formed
		return match
	})
}

// unfinishedSuffix ends the hidden names.
const unfinishedSuffix = ".unfinished"

// IsUnfinished tells hidden names from others.
func IsUnfinished(name string) bool {
	return strings.HasPrefix(name, ".") && strings.HasSuffix(name, unfinishedSuffix)
}
