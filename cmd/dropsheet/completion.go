package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/shells"
	"dropsheet/tile/job"
)

// completions are the shells that the command line can be completed in, and what each is told.
var completions = []struct {
	shell string
	write func([]shells.Command) string
}{{"bash", shells.Bash}, {"zsh", shells.Zsh}, {"fish", shells.Fish}}

func shellNames() (all []string) {
	for _, c := range completions {
		all = append(all, c.shell)
	}
	return all
}

var completionCommand = command{
	name: "completion", args: "SHELL",
	summary: "what a shell needs to complete its commands",
	about: `Writes what bash, zsh or fish needs to complete commands, flags and the words
that they take. To have it always, put the line into the file that the shell
reads when it starts:
  bash   source <(dropsheet completion bash)
  zsh    source <(dropsheet completion zsh)
  fish   dropsheet completion fish | source`,
	example: "dropsheet completion bash",
	prepare: func(*pflag.FlagSet) action {
		return func(_ context.Context, c console, args []string) error {
			if len(args) == 1 {
				for _, to := range completions {
					if to.shell == args[0] {
						_, err := io.WriteString(c.out, to.write(told()))
						return err
					}
				}
			}
			got := "none"
			if len(args) > 0 {
				got = fmt.Sprintf("%q", args)
			}
			return job.WrongWords(fmt.Errorf("completion takes the name of one shell, and got %s\nhint: take %s", got,
				listed(shellNames(), "or")))
		}
	},
}

var manualCommand = command{
	name: "manual", args: "",
	summary: "this help as a page for man",
	about: `Writes all of this help as one page for man. To read it, or to have it for man
dropsheet:
  dropsheet manual > dropsheet.1
  man ./dropsheet.1`,
	example: "dropsheet manual",
	prepare: func(*pflag.FlagSet) action {
		return func(_ context.Context, c console, args []string) error {
			if len(args) > 0 {
				return job.WrongWords(fmt.Errorf("manual takes nothing, and got %q\n"+
					"hint: dropsheet manual > dropsheet.1 writes all of it", args))
			}
			var all []shells.Heading
			for _, h := range headings {
				all = append(all, shells.Heading{Title: h.title, Flags: strings.Fields(h.flags)})
			}
			_, err := io.WriteString(c.out, shells.Manual(purpose+"\n\n"+lengthsTaken, told(), all, exitCodes))
			return err
		}
	},
}

// told are the commands as shells and man are told of them.
func told() (all []shells.Command) {
	for _, k := range commands {
		flags := pflag.NewFlagSet(k.name, pflag.ContinueOnError)
		k.prepare(flags)
		c := shells.Command{Name: k.name, Args: k.args, Summary: k.summary, About: k.about, Example: k.example, Flags: flags}
		if k.name == "completion" {
			c.Words = shellNames()
		}
		all = append(all, c)
	}
	return all
}
