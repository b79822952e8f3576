package shells

import (
	"fmt"
	"strings"

	"dropsheet/cmd/dropsheet/ask"
)

// Heading is a heading that flags stand under.
type Heading struct {
	Title string
	Flags []string
}

// Manual is the page of the manual, for man, in its macros: what the program is for, each command with its flags under
// their headings, and the exit codes.
func Manual(what string, commands []Command, headings []Heading, exitCodes []string) string {
	var b strings.Builder
	b.WriteString(".TH DROPSHEET 1 \"\" dropsheet\n.SH NAME\ndropsheet \\- pictures for falling drops\n.SH SYNOPSIS\n")
	for i, c := range commands {
		if i > 0 {
			b.WriteString(".br\n")
		}
		fmt.Fprintf(&b, ".B dropsheet %s\n%s\n", c.Name, roff(strings.TrimSpace(c.Args+" [flags]")))
	}
	fmt.Fprintf(&b, ".SH DESCRIPTION\n%s", paragraphs(what))
	b.WriteString(".SH COMMANDS\n")
	for _, c := range commands {
		fmt.Fprintf(&b, ".SS %s\n%s", roff(c.Name), paragraphs(c.About))
		for _, h := range headings {
			first := true
			for _, name := range h.Flags {
				f := c.Flags.Lookup(name)
				if f == nil {
					continue
				}
				if first {
					fmt.Fprintf(&b, ".PP\n.I %s\n", roff(h.Title))
					first = false
				}
				kind, about := ask.Usage(f)
				fmt.Fprintf(&b, ".TP\n%s\n%s\n", flagTag(name, kind), roff(about))
			}
		}
		fmt.Fprintf(&b, ".PP\nExample:\n.PP\n.nf\n%s\n.fi\n", roff(c.Example))
	}
	b.WriteString(".SH EXIT STATUS\n")
	for code, means := range exitCodes {
		fmt.Fprintf(&b, ".TP\n%d\n%s\n", code, roff(means))
	}
	return b.String()
}

// flagTag is a flag with the kind of its value.
func flagTag(name, kind string) string {
	return strings.TrimSpace(fmt.Sprintf(`\fB%s\fR \fI%s\fR`, roff("--"+name), roff(kind)))
}

// paragraphs are those of a text: lines that are set in stay lines, the others flow.
func paragraphs(text string) string {
	var b strings.Builder
	asIs := false
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\n")
		if setIn := strings.HasPrefix(line, "  "); setIn != asIs {
			asIs = setIn
			if asIs {
				b.WriteString(".PP\n.nf\n")
			} else {
				b.WriteString(".fi\n.PP\n")
			}
		}
		if line == "" {
			b.WriteString(".PP\n")
			continue
		}
		b.WriteString(roff(line) + "\n")
	}
	if asIs {
		b.WriteString(".fi\n")
	}
	return b.String()
}

// roff is text as man's macros take it: nothing in it is a request, and hyphens stay those that one types.
func roff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(text)
	if strings.HasPrefix(text, ".") || strings.HasPrefix(text, "'") {
		text = `\&` + text
	}
	return text
}
