// Package golden holds the test that compares what the program makes with the pictures in testdata/golden.
package golden
