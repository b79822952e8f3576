package main

import (
	"regexp"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"
)

func flagsOf(k command) *pflag.FlagSet {
	flags := pflag.NewFlagSet(k.name, pflag.ContinueOnError)
	k.prepare(flags)
	return flags
}

// Help fits a terminal, ends in an example, and explains every flag, once.
func TestHelp(t *testing.T) {
	for _, k := range commands {
		stdout, stderr, code := dropsheet(t, k.name, "--help")
		require.Equal(t, exitDone, code)
		require.Empty(t, stderr)
		require.Contains(t, stdout, "example:\n  dropsheet "+k.name)
		for line := range strings.Lines(stdout) {
			require.LessOrEqual(t, len([]rune(strings.TrimRight(line, "\n"))), 80, line)
			require.NotRegexp(t, `\(default:?\s*$`, line, "a default is not torn from its word")
		}
		flagsOf(k).VisitAll(func(f *pflag.Flag) {
			explained := regexp.MustCompile(`(?m)^  --` + f.Name + ` [^\n]*(  |\n {26})[a-z]`)
			require.Len(t, explained.FindAllString(stdout, -1), 1, "%s --%s", k.name, f.Name)
		})
	}
}

// Flags stand under headings, those of make in the order in which a shot is planned.
func TestHelpHeadings(t *testing.T) {
	stdout, _, _ := dropsheet(t, "make", "--help")
	var shown []string
	for _, m := range regexp.MustCompile(`(?m)^([a-z ]+):\n  --`).FindAllStringSubmatch(stdout, -1) {
		shown = append(shown, m[1])
	}
	require.Equal(t, []string{"drop", "size and distance", "picture", "board beyond the picture", "camera",
		"exposure and motion", "light", "paper and printer", "seams", "files and output", "a job made again"}, shown)

	known := map[string]bool{}
	for _, k := range commands {
		flagsOf(k).VisitAll(func(f *pflag.Flag) { known[f.Name] = true })
	}
	for _, h := range headings {
		for _, name := range strings.Fields(h.flags) {
			require.True(t, known[name], "no command has --%s, which stands under %q, or it stands there twice", name, h.title)
			delete(known, name)
		}
	}
	require.Empty(t, known, "flags without a heading are not shown")
}

// The overview has a line for each command and each exit code, and help by name is a command's own help.
func TestOverview(t *testing.T) {
	for _, words := range [][]string{{"--help"}, {"-h"}, {"help"}, {"help", "help"}, {}} {
		stdout, stderr, code := dropsheet(t, words...)
		if len(words) == 0 {
			require.Equal(t, exitWrongWords, code)
			require.Empty(t, stdout)
			stdout = stderr
		} else {
			require.Equal(t, exitDone, code)
			require.Empty(t, stderr)
		}
		_, usage, _ := strings.Cut(stdout, "usage:\n")
		usage, _, _ = strings.Cut(usage, "\n\n")
		for _, name := range []string{"size", "make", "proof", "seams", "reprint", "gauge", "check", "job", "rehearse",
			"completion", "manual"} {
			require.Len(t, regexp.MustCompile(`(?m)^  dropsheet `+name+` [A-Z\[\]|. ]*[a-z].+$`).FindAllString(usage, -1), 1,
				name)
		}
		require.Len(t, strings.Split(usage, "\n"), 11)
		for _, line := range []string{"0  done", "1  the job failed", "2  the command line is wrong"} {
			require.Contains(t, stdout, "\n  "+line)
		}
		for line := range strings.Lines(stdout) {
			require.LessOrEqual(t, len([]rune(strings.TrimRight(line, "\n"))), 80, line)
		}
	}
	for _, k := range commands {
		want, _, _ := dropsheet(t, k.name, "--help")
		got, _, code := dropsheet(t, "help", k.name)
		require.Equal(t, exitDone, code)
		require.Equal(t, want, got)
	}
	_, stderr, code := dropsheet(t, "help", "prnt")
	require.Equal(t, exitWrongWords, code)
	require.Contains(t, stderr, `there is no command "prnt"`+"\nhint: take size, make")
}
