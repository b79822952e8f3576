// Package job makes a job from a picture and a setup, reads it again, reprints its sheets and checks it. It is what
// every way to ask for these goes through: it shows nothing itself, but tells a Watch how the work goes on.
//
// A job is a folder: the sheets, the guide, pictures of what the camera will see, and the job file, from which alone
// every sheet can be made again as it was.
package job
