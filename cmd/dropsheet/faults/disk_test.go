//go:build unix

package faults

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
)

// TestNoRoomForAFile: the system refuses to let a file grow, as it does on a full disk. The run says which
// file, and nothing is lost or left. The limit counts blocks of 512 bytes (POSIX.1-2017, ulimit) or of 1024
// (bash).
func TestNoRoomForAFile(t *testing.T) {
	b := newBench(t)
	b.lay(t, b.oldFiles)
	for _, c := range []struct {
		blocks int
		file   string
	}{{0, artCopy}, {4, "sheets.pdf"}, {200, "seams.png"}} {
		require.Greater(t, len(b.newFiles[c.file]), 1024*c.blocks, "the limit is too wide for %s", c.file)
		t.Run(fmt.Sprintf("%d blocks", c.blocks), func(t *testing.T) {
			stderr, code := runBuilt(t, under(fmt.Sprintf("ulimit -f %d", c.blocks)), b.makeNew()...)
			require.Equal(t, programtest.Failed, code, stderr)
			require.Regexp(t, `^dropsheet: file "`+c.file+`" was not written: file too large`, stderr)
			require.Equal(t, "old", b.state(t))
			require.Empty(t, b.beside(t))
		})
	}
	t.Run("reprint", func(t *testing.T) {
		out := filepath.Join(b.job, "reprint-ALL.pdf")
		require.NoError(t, os.WriteFile(out, []byte("before"), 0o600))
		stderr, code := runBuilt(t, under("ulimit -f 1"), "reprint", b.job, "all", "--force")
		require.Equal(t, programtest.Failed, code, stderr)
		require.Contains(t, stderr, `file "reprint-ALL.pdf" was not written: file too large`)
		require.NotContains(t, stderr, ".unfinished")
		files := programtest.Files(t, b.job)
		require.Equal(t, "before", string(files["reprint-ALL.pdf"]))
		delete(files, "reprint-ALL.pdf")
		require.True(t, sameFiles(files, b.oldFiles))
	})
}

// TestPlacesThatCantBeWritten: a folder that may only be read, a file where a folder is asked for, a way
// through a file, a link to nothing.
func TestPlacesThatCantBeWritten(t *testing.T) {
	b := newBench(t)
	b.lay(t, b.oldFiles)
	readOnly := filepath.Join(b.parent, "read-only")
	require.NoError(t, os.Mkdir(readOnly, 0o555))
	file := filepath.Join(b.parent, "file")
	require.NoError(t, os.WriteFile(file, []byte("mine"), 0o600))
	toNothing := filepath.Join(b.parent, "to-nothing")
	require.NoError(t, os.Symlink("nothing", toNothing))
	before := b.beside(t)
	for _, c := range []struct {
		name, out, says string
		anybody         bool // for a user whom permissions bind
	}{
		{"a folder that may only be read", filepath.Join(readOnly, "job"), `read-only" can't be written: permission denied`,
			true},
		{"folders in one that may only be read", filepath.Join(readOnly, "a", "job"), `"` + filepath.Join(readOnly, "a") +
			`" can't be made: permission denied`, true},
		{"a file", file, "can't be used: not a directory", false},
		{"a way through a file", filepath.Join(file, "job"), "can't be made: not a directory", false},
		{"a link to nothing", toNothing, "a link to what is not there", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := newProcess(t, nil, "make", b.art, "--out", c.out, "--force")
			if c.anybody {
				asAnybody(t, p, b)
			}
			require.NoError(t, p.Start())
			require.Equal(t, programtest.Failed, p.end(t))
			require.Contains(t, p.stderr.String(), c.says)
			require.Contains(t, p.stderr.String(), "choose another with --out")
			require.NotContains(t, p.stderr.String(), ".unfinished")
			require.Equal(t, before, b.beside(t))
			require.Equal(t, "old", b.state(t))
			requireEmpty(t, readOnly)
		})
	}
	t.Run("reprint into a folder that may only be read", func(t *testing.T) {
		p := newProcess(t, nil, "reprint", b.job, "all", "--out", filepath.Join(readOnly, "again.pdf"))
		asAnybody(t, p, b)
		require.NoError(t, p.Start())
		require.Equal(t, programtest.Failed, p.end(t))
		require.Regexp(t, `read-only/again.pdf" can't be written: permission denied`+
			"\nhint: choose another place with --out\\n$",
			p.stderr.String())
		requireEmpty(t, readOnly)
	})
}

// asAnybody runs the program as a user whom permissions bind: the superuser passes them all.
func asAnybody(t *testing.T, p *process, b *bench) {
	t.Helper()
	if os.Geteuid() != 0 {
		return
	}
	const nobody = 65534 // by custom on Linux; any other user would do
	p.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	for _, folder := range []string{filepath.Dir(b.parent), b.parent} {
		require.NoError(t, os.Chmod(folder, 0o755))
	}
	require.NoError(t, os.Chmod(b.art, 0o644))
}

// TestUmask: what is made may be used by whom the user's umask says.
func TestUmask(t *testing.T) {
	b := newBench(t)
	mode := func(path string) fs.FileMode {
		info, err := os.Stat(path)
		require.NoError(t, err)
		return info.Mode()
	}
	stderr, code := runBuilt(t, under("umask 027"), b.makeNew()...)
	require.Equal(t, programtest.Done, code, stderr)
	require.Equal(t, fs.ModeDir|0o750, mode(b.job))
	for _, name := range jobFiles {
		require.Equal(t, fs.FileMode(0o640), mode(filepath.Join(b.job, name)), name)
	}
	for umask, want := range map[string]fs.FileMode{"002": 0o664, "022": 0o644, "077": 0o600} {
		out := filepath.Join(b.parent, umask+".pdf")
		stderr, code := runBuilt(t, under("umask "+umask), "reprint", b.job, "all", "--out", out)
		require.Equal(t, programtest.Done, code, stderr)
		require.Equal(t, want, mode(out), umask)
	}
}

func requireEmpty(t *testing.T, folder string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.Empty(t, entries, "nothing may be left behind")
}
