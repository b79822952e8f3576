package shells

import (
	"fmt"
	"strings"
)

// Fish is the completion for fish.
func Fish(commands []Command) string {
	var b strings.Builder
	b.WriteString(`# Completion of dropsheet's command line for fish: dropsheet completion fish | source
function __dropsheet_command # the one that was typed, if it is this one
	set -l words (commandline -opc)
	test (count $words) -gt 1; and test "$words[2]" = "$argv[1]"
end
function __dropsheet_no_command
	test (count (commandline -opc)) -eq 1
end
`)
	for _, c := range commands {
		fmt.Fprintf(&b, "complete -c dropsheet -n __dropsheet_no_command -f -a %s -d %s\n", c.Name, fishQuoted(c.Summary))
	}
	b.WriteString("complete -c dropsheet -n __dropsheet_no_command -f -a help -d 'help for a command'\n")
	fmt.Fprintf(&b, "complete -c dropsheet -n '__dropsheet_command help' -f -a %s\n",
		fishQuoted(strings.Join(names(commands), " ")))
	for _, c := range commands {
		when := fishQuoted("__dropsheet_command " + c.Name)
		for _, f := range flagsOf(c) {
			value := ""
			switch {
			case f.kind == "":
			case f.files:
				value = " -r -F"
			case len(f.words) > 0:
				value = " -x -a " + fishQuoted(strings.Join(f.words, " "))
			default:
				value = " -x"
			}
			fmt.Fprintf(&b, "complete -c dropsheet -n %s -l %s%s -d %s\n", when, f.name, value, fishQuoted(brief(f.about)))
		}
		fmt.Fprintf(&b, "complete -c dropsheet -n %s -l help -d 'explain the flags'\n", when)
		if len(c.Words) > 0 {
			fmt.Fprintf(&b, "complete -c dropsheet -n %s -f -a %s\n", when, fishQuoted(strings.Join(c.Words, " ")))
		}
	}
	return b.String()
}

// fishQuoted is a word in quotes, within which fish knows two signs.
func fishQuoted(word string) string {
	return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(word) + "'"
}
