//go:build darwin || freebsd || linux

package place

import "golang.org/x/sys/unix"

// writable tells why nothing can be made in a folder, or taken out of it, by whom this run belongs to.
func writable(folder string) error {
	return unix.Faccessat(unix.AT_FDCWD, folder, unix.W_OK|unix.X_OK, unix.AT_EACCESS)
}
