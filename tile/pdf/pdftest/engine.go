package pdftest

import (
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"sync"
	"time"

	pdfium "github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

// reader starts the one PDFium of this test binary, and it is never stopped.
var reader = sync.OnceValues(func() (pdf pdfium.Pdfium, err error) {
	err = withCompiled(compiledFolder, func(engine wazero.RuntimeConfig) error {
		pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1, RuntimeConfig: engine})
		if err != nil {
			return err
		}
		pdf, err = pool.GetInstance(time.Minute)
		return err
	})
	return pdf, err
})

// withCompiled starts PDFium from what an earlier test binary compiled in the folder, and leaves there what it
// compiles itself: that takes some 3 s of processor time, reading it again some 0.2 s. Where the folder
// is "", cannot be written or holds something spoilt, it compiles all anew.
//
// Test binaries may do this at once: wazero writes a file under another name and then renames it.
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

// compiledFolder is asked for before a test can change the environment.
var compiledFolder = func() string {
	cache, err := os.UserCacheDir()
	version := engineVersion()
	if err != nil || version == "" {
		return ""
	}
	return filepath.Join(cache, "dropsheet-tests", version+"-"+runtime.Version())
}()

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

func writable(folder string) bool {
	if folder == "" || os.MkdirAll(folder, 0o700) != nil {
		return false
	}
	probe, err := os.CreateTemp(folder, "probe-*.tmp")
	if err != nil {
		return false
	}
	probe.Close()
	return os.Remove(probe.Name()) == nil
}
