package shells

import (
	"fmt"
	"strings"
)

// Zsh is the completion for zsh: sourced, or as a file _dropsheet on its path of functions.
func Zsh(commands []Command) string {
	var b strings.Builder
	b.WriteString("#compdef dropsheet\n" +
		"# Completion of dropsheet's command line for zsh: source <(dropsheet completion zsh)\n" +
		"_dropsheet() {\n\tlocal -a commands\n\tcommands=(\n")
	for _, c := range commands {
		fmt.Fprintf(&b, "\t\t%s\n", zshQuoted(c.Name+":"+strings.ReplaceAll(c.Summary, ":", `\:`)))
	}
	b.WriteString("\t\t'help:help for a command'\n\t)\n\tif (( CURRENT == 2 )); then\n" +
		"\t\t_describe command commands\n\t\treturn\n\tfi\n" +
		"\tlocal name=$words[2]\n\tshift words\n\t(( CURRENT-- ))\n\tcase $name in\n")
	for _, c := range commands {
		fmt.Fprintf(&b, "\t%s) _arguments \\\n", c.Name)
		for _, f := range flagsOf(c) {
			fmt.Fprintf(&b, "\t\t%s \\\n", zshQuoted(zshFlag(f)))
		}
		fmt.Fprintf(&b, "\t\t'--help[explain the flags]' \\\n\t\t%s ;;\n", zshQuoted(zshRest(c)))
	}
	fmt.Fprintf(&b, "\thelp) _arguments %s ;;\n", zshQuoted("*:command:("+strings.Join(names(commands), " ")+")"))
	b.WriteString(`	esac
}
if [ "$funcstack[1]" = _dropsheet ]; then
	_dropsheet "$@"
else
	compdef _dropsheet dropsheet
fi
`)
	return b.String()
}

// zshFlag is what _arguments is told of a flag.
func zshFlag(f flag) string {
	escaped := strings.NewReplacer(`[`, `\[`, `]`, `\]`, `:`, `\:`)
	spec := "--" + f.name
	if f.many {
		spec = "*" + spec
	}
	if f.kind == "" {
		return spec + "[" + escaped.Replace(brief(f.about)) + "]"
	}
	action := " "
	switch {
	case len(f.words) > 0:
		action = "(" + strings.Join(f.words, " ") + ")"
	case f.files:
		action = "_files"
	}
	return spec + "=[" + escaped.Replace(brief(f.about)) + "]:" + escaped.Replace(f.kind) + ":" + action
}

// zshRest is what it is told of what is no flag.
func zshRest(c Command) string {
	if len(c.Words) > 0 {
		return "*:" + strings.ToLower(c.Args) + ":(" + strings.Join(c.Words, " ") + ")"
	}
	return "*:file:_files"
}

// zshQuoted is a word in quotes.
func zshQuoted(word string) string { return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'" }
