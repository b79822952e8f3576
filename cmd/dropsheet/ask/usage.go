package ask

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"
)

// Usage is what help says of a flag: the kind of its value, empty where it stands alone, and what it does, with its
// default where it does not say that itself.
func Usage(f *pflag.Flag) (kind, about string) {
	kind, about = pflag.UnquoteUsage(f)
	if f.NoOptDefVal != "" {
		kind = ""
	}
	if f.DefValue != "" && f.DefValue != "false" && !strings.Contains(about, "(default") {
		about += fmt.Sprintf(" (default %s)", f.DefValue)
	}
	return kind, about
}
