//go:build darwin || freebsd || linux

package place

import "golang.org/x/sys/unix"

// writable tells why nothing can be made in a folder, or taken out of it, by whom this run belongs to. It asks without
// flags: with them the library takes the system's no to a folder that nobody may change (chattr +i) for a system that
// does not know them, and goes by the mode, of which root needs none.
func writable(folder string) error { return unix.Access(folder, unix.W_OK|unix.X_OK) }
