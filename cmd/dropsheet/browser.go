package main

import (
	"os/exec"
	"runtime"
)

// openInBrowser opens an address in the browser that the system has for that.
func openInBrowser(url string) error {
	name, args := "xdg-open", []string{url}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", url}
	}
	browser := exec.Command(name, args...)
	if err := browser.Start(); err != nil {
		return err
	}
	go func() { _ = browser.Wait() }()
	return nil
}
