package main

import (
	"fmt"
	"runtime/debug"

	"dropsheet/tile/job"
)

// release is what .ci/release calls the archive that this program is in; empty for one that was built otherwise.
var release string

// version says which dropsheet this is, and of which format its jobs are.
func version() string {
	name := release
	if info, ok := debug.ReadBuildInfo(); ok && name == "" {
		name = "built from its source"
		for _, s := range info.Settings {
			const short = 12 // letters of a commit's name
			if s.Key == "vcs.revision" {
				name += fmt.Sprintf(", %.*s", short, s.Value)
			}
		}
	}
	return fmt.Sprintf("dropsheet %s\njobs of format %d\n", name, job.Version)
}
