// Package browsertest starts a browser for tests that only one can tell. All of it is behind the build tag browser.
package browsertest
