package place

import (
	"path/filepath"
	"slices"
	"strings"
)

// JobFile is what the job file is called in a job's folder.
const JobFile = "job.json"

// Files is what a job's folder is made of, in the order that it is written; reprints and trials come beside them.
var Files = []string{"sheets.pdf", "guide.pdf", "proof.png", "seams.png", JobFile}

// keptFiles are those of a job's files that are only replaced with the whole job. A proof or a seam map may be
// replaced by a trial.
var keptFiles = []string{JobFile, "sheets.pdf", "guide.pdf"}

// besidePatterns match what is written into a job's folder later: reprints and trials.
var besidePatterns = []string{"reprint-*.pdf", "proof-*.png", "seams-*.png"}

// isOurs tells whether a file of that name in a job's folder is dropsheet's.
func isOurs(name string) bool {
	return slices.Contains(Files, name) || isUnfinished(name) ||
		slices.ContainsFunc(besidePatterns, func(pattern string) bool {
			match, _ := filepath.Match(pattern, name) // the patterns are well formed
			return match
		})
}

// unfinishedSuffix ends the hidden names.
const unfinishedSuffix = ".unfinished"

// unfinished is the hidden name of what becomes path.
func unfinished(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+unfinishedSuffix)
}

// isUnfinished tells hidden names from others.
func isUnfinished(name string) bool {
	return strings.HasPrefix(name, ".") && strings.HasSuffix(name, unfinishedSuffix)
}
