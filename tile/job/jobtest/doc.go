// Package jobtest has what tests of jobs share: an artwork, job files with something wrong in them, and a bound on
// what reading them takes.
package jobtest
