// Package place puts a job's folder, or a single file, in its place: whole or not at all, and by one run at a time.
//
// What is being made lies under a hidden name beside its final one. While a run lives it holds a lock there,
// which the system takes from it when it ends, however it ends. So what nobody holds was left by a run that
// was killed, and may be cleaned up. Nothing is replaced unasked, and nothing that is not dropsheet's at all.
package place
