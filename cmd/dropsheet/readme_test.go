package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"
)

// commandLine is a shown command: dropsheet, or the way that a fresh checkout runs it.
var commandLine = regexp.MustCompile(`(?m)^ {2,4}(?:dropsheet|go run \./cmd/dropsheet) (.+)$`)

// withFewPixels gives a shown make or proof a camera of few pixels, and a make the small copy of its artwork.
func withFewPixels(t *testing.T, root string, words []string) []string {
	t.Helper()
	if words[0] != "make" && words[0] != "proof" {
		return words
	}
	if at := slices.Index(words, "--pixels"); at >= 0 {
		words = slices.Delete(words, at, at+2)
	}
	if info, err := os.Stat(words[1]); words[0] == "make" && !(err == nil && info.IsDir()) { // a folder is a job
		require.FileExists(t, words[1])
		if filepath.Ext(words[1]) == ".pdf" {
			return append(words, "--pixels", "120x80", "--ppi", "25") // a page is as quick as it is drawn coarsely
		}
		words[1] = filepath.Join(root, "testdata", filepath.Base(words[1]))
	}
	return append(words, "--pixels", "120x80")
}

// Every command that README and --help show runs, in the order shown, in one empty folder that has the
// examples beside it: the first as it is, and those after it with few pixels, to be quick.
func TestShownCommandsRun(t *testing.T) {
	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	texts := []struct{ name, text string }{{"README.md", string(readme)},
		{"overview", overview()[strings.Index(overview(), "example:"):]}}
	for _, k := range commands {
		texts = append(texts, struct{ name, text string }{k.name + " --help", "example:\n  " + k.example + "\n"})
	}

	work := t.TempDir()
	require.NoError(t, os.Symlink(filepath.Join(root, "examples"), filepath.Join(work, "examples")))
	t.Chdir(work)
	t.Setenv("XDG_CONFIG_HOME", t.TempDir()) // where printers are kept
	ran := map[string]bool{}
	for _, text := range texts {
		shown := commandLine.FindAllStringSubmatch(text.text, -1)
		require.NotEmpty(t, shown, text.name)
		for _, m := range shown {
			if ran[m[1]] {
				continue
			}
			ran[m[1]] = true
			words := strings.Fields(m[1])
			if len(ran) > 1 {
				words = withFewPixels(t, root, words)
			}
			run := func() (string, string, int) { return dropsheet(t, words...) }
			if words[0] == "rehearse" { // which goes on until it is ended
				run = func() (string, string, int) { return rehearsed(t, nil, words[1:]...) }
			}
			stdout, stderr, code := run()
			require.Equal(t, exitDone, code, "%s shows %q: %s", text.name, m[0], stderr)
			require.NotEmpty(t, stdout)
		}
	}
}

// Every flag that the README names exists, and every picture that it shows is there.
func TestReadmeNamesWhatThereIs(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	known := map[string]bool{"--help": true}
	for _, k := range commands {
		flags := pflag.NewFlagSet(k.name, pflag.ContinueOnError)
		k.prepare(flags)
		flags.VisitAll(func(f *pflag.Flag) { known["--"+f.Name] = true })
	}
	named := regexp.MustCompile(`--[a-z][a-z-]*`).FindAllString(string(text), -1)
	require.NotEmpty(t, named)
	for _, flag := range named {
		require.True(t, known[flag], "README names %s, which no command has", flag)
	}
	flagsOf(makeCommand).VisitAll(func(f *pflag.Flag) {
		require.Contains(t, named, "--"+f.Name, "make has a flag that README does not name")
	})
	pictures := regexp.MustCompile(`\]\(([^)]+\.(?:jpg|png|md))\)`).FindAllStringSubmatch(string(text), -1)
	require.NotEmpty(t, pictures)
	for _, m := range pictures {
		require.FileExists(t, filepath.Join("../..", m[1]))
	}
}
