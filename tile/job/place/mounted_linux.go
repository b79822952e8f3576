package place

import "golang.org/x/sys/unix"

// mounted tells whether something is mounted at path itself: its name can't be given to anything else.
func mounted(path string) bool {
	var info unix.Statx_t
	err := unix.Statx(unix.AT_FDCWD, path, unix.AT_SYMLINK_NOFOLLOW, 0, &info)
	return err == nil && info.Attributes&info.Attributes_mask&unix.STATX_ATTR_MOUNT_ROOT != 0
}
