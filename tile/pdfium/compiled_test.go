package pdfium

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/tetratelabs/wazero"
)

// answer is a WebAssembly module by hand: a function that gives 42 (WebAssembly Core Specification 1.0, 5.5,
// recalled from memory).
var answer = []byte("\x00asm\x01\x00\x00\x00" +
	"\x01\x05\x01\x60\x00\x01\x7f" + // types: none to i32
	"\x03\x02\x01\x00" + // functions: one of that type
	"\x07\x05\x01\x01a\x00\x00" + // exports: it, as "a"
	"\x0a\x06\x01\x04\x00\x41\x2a\x0b") // code: i32.const 42

func TestCompiledCodeIsShared(t *testing.T) {
	require.NotEmpty(t, engineVersion(), "the path of wazero's source no longer tells its version")

	starts := 0
	run := func(engine wazero.RuntimeConfig) error {
		starts++
		ctx := context.Background()
		made := wazero.NewRuntimeWithConfig(ctx, engine)
		defer made.Close(ctx)
		module, err := made.Instantiate(ctx, answer)
		if err != nil {
			return err
		}
		got, err := module.ExportedFunction("a").Call(ctx)
		require.NoError(t, err)
		require.Equal(t, []uint64{42}, got)
		return nil
	}
	folder := filepath.Join(t.TempDir(), "not", "there", "yet")

	require.NoError(t, withCompiled(folder, run))
	left := files(t, folder)
	require.Len(t, left, 1)
	written, err := os.Stat(left[0])
	require.NoError(t, err)

	require.NoError(t, withCompiled(folder, run))
	require.Equal(t, left, files(t, folder))
	read, err := os.Stat(left[0])
	require.NoError(t, err)
	require.True(t, os.SameFile(written, read), "compiled anew though it was there")
	require.Equal(t, 2, starts)

	require.NoError(t, os.WriteFile(left[0], []byte("spoilt"), 0o600))
	require.NoError(t, withCompiled(folder, run))
	require.Equal(t, 4, starts, "once in vain")
	require.NoError(t, withCompiled(folder, run))
	require.Equal(t, left, files(t, folder), "written anew")
	require.Equal(t, 5, starts)

	inTheWay := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(inTheWay, nil, 0o600))
	for _, none := range []string{"", inTheWay, filepath.Join(inTheWay, "under")} {
		starts = 0
		require.NoError(t, withCompiled(none, run), none)
		require.Equal(t, 1, starts, none)
	}
	require.FileExists(t, inTheWay)

	if runtime.GOOS != "windows" {
		open := t.TempDir()
		require.NoError(t, os.Chmod(open, 0o777))
		require.NoError(t, withCompiled(open, run))
		require.Empty(t, files(t, open), "what others may write is not run")
	}
}

func files(t *testing.T, folder string) (paths []string) {
	t.Helper()
	require.NoError(t, filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			paths = append(paths, path)
		}
		return err
	}))
	return paths
}
