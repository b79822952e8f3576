// Package loops holds the closed loops: jobs that the built program makes are rendered by PDFium, cut and pasted by
// job.json alone, and looked at through the drop by a ray trace of their own.
package loops
