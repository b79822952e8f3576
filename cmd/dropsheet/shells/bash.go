package shells

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// Bash is the completion for bash, from 3.2 on, which macOS has.
func Bash(commands []Command) string {
	var b strings.Builder
	b.WriteString(`# Completion of dropsheet's command line for bash: source <(dropsheet completion bash)
_dropsheet() {
	local IFS=$'\n' flags="" words="" cur="${COMP_WORDS[COMP_CWORD]}" prev="${COMP_WORDS[COMP_CWORD-1]}"
	if [[ $cur == "=" ]]; then # --flag=, which bash takes for two words
		cur=""
	elif [[ $prev == "=" ]]; then
		prev="${COMP_WORDS[COMP_CWORD-2]}"
	fi
	COMPREPLY=()
	if [[ $COMP_CWORD -eq 1 ]]; then
`)
	fmt.Fprintf(&b, "\t\tCOMPREPLY=($(compgen -W %s -- \"$cur\"))\n\t\treturn\n\tfi\n", bashWords(append(names(commands),
		"help")))
	b.WriteString("\tcase \"$prev\" in\n")
	words, alone := map[string][]string{}, map[string]bool{}
	for _, c := range commands {
		for _, f := range flagsOf(c) {
			switch {
			case f.kind == "" || f.files:
			case len(f.words) > 0:
				words[f.name] = f.words
			default:
				alone["--"+f.name] = true
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(words)) {
		fmt.Fprintf(&b, "\t--%s) COMPREPLY=($(compgen -W %s -- \"$cur\")); return ;;\n", name, bashWords(words[name]))
	}
	fmt.Fprintf(&b, "\t%s) return ;; # its value is typed\n\tesac\n\tcase \"${COMP_WORDS[1]}\" in\n",
		strings.Join(slices.Sorted(maps.Keys(alone)), "|"))
	for _, c := range commands {
		var flags []string
		for _, f := range flagsOf(c) {
			flags = append(flags, "--"+f.name)
		}
		fmt.Fprintf(&b, "\t%s) flags=%s", c.Name, bashWords(append(flags, "--help")))
		if len(c.Words) > 0 {
			fmt.Fprintf(&b, " words=%s", bashWords(c.Words))
		}
		b.WriteString(" ;;\n")
	}
	fmt.Fprintf(&b, "\thelp) words=%s ;;\n", bashWords(names(commands)))
	b.WriteString(`	esac
	if [[ $cur == -* ]]; then
		COMPREPLY=($(compgen -W "$flags" -- "$cur"))
	elif [[ -n $words ]]; then
		COMPREPLY=($(compgen -W "$words" -- "$cur"))
	else
		COMPREPLY=($(compgen -f -- "$cur"))
	fi
}
complete -o filenames -F _dropsheet dropsheet
`)
	return b.String()
}

// bashWords is a list as bash's own quotes write it, a word a line.
func bashWords(words []string) string { return "$'" + strings.Join(words, `\n`) + "'" }
