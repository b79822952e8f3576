package pdfium

import (
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

// withCompiled starts PDFium from what an earlier run compiled in the folder, and leaves there what it compiles itself:
// that takes some 3 s of processor time, reading it again some 0.1 s. Where the folder is "", is not the user's
// alone, cannot be written or holds something spoilt, it compiles all anew.
//
// Programs may do this at once: wazero writes a file under another name and then renames it.
func withCompiled(folder string, start func(wazero.RuntimeConfig) error) error {
	// PDFium's jumps out of errors are WebAssembly exceptions, which wazero takes only when told to.
	engine := wazero.NewRuntimeConfig().
		WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling)
	if writable(folder) {
		if cache, err := wazero.NewCompilationCacheWithDir(folder); err == nil {
			if start(engine.WithCompilationCache(cache)) == nil {
				return nil
			}
			os.RemoveAll(folder)
		}
	}
	return start(engine)
}

// CompiledFolder is where machine code may be kept: under the name in the user's cache folder, apart for each version
// of the engine and of Go; "" where there is none.
func CompiledFolder(name string) string {
	cache, err := os.UserCacheDir()
	version := engineVersion()
	if err != nil || version == "" {
		return ""
	}
	return filepath.Join(cache, name, version+"-"+runtime.Version())
}

// engineVersion is the module version of wazero, such as "wazero@v1.12.0", or "" where its path does not tell,
// as in a vendor folder. wazero itself asks the build information, which test binaries do not have.
// It sees by itself whether PDFium is another or the processor.
func engineVersion() string {
	pc := reflect.ValueOf(wazero.NewRuntimeConfig).Pointer()
	file, _ := runtime.FuncForPC(pc).FileLine(pc)
	for part := range strings.SplitSeq(filepath.ToSlash(file), "/") {
		if strings.HasPrefix(part, "wazero@") {
			return part
		}
	}
	return ""
}

// writable tells whether a folder, which is made if need be, can be written by its owner and by nobody else.
func writable(folder string) bool {
	if folder == "" || os.MkdirAll(folder, 0o700) != nil {
		return false
	}
	const othersMayWrite = 0o022 // and what is read from there is run
	if info, err := os.Stat(folder); err != nil || runtime.GOOS != "windows" && info.Mode()&othersMayWrite != 0 {
		return false
	}
	probe, err := os.CreateTemp(folder, "probe-*.tmp")
	if err != nil {
		return false
	}
	probe.Close()
	return os.Remove(probe.Name()) == nil
}
