// Package faults holds tests of the built program when something goes wrong around it: it is killed, the disk is full,
// two runs meet, the artwork changes meanwhile, a job file is hostile.
package faults
