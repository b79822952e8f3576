package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"
)

// inShell runs what a shell is told of the command line, and a script after it, in a folder with one file; ok is false
// where that shell is not there.
func inShell(t *testing.T, shell, script string) (lines []string, ok bool) {
	t.Helper()
	path, err := exec.LookPath(shell)
	if err != nil {
		t.Logf("not run: %s is not there", shell)
		return nil, false
	}
	told, stderr, code := dropsheet(t, "completion", shell)
	require.Equal(t, exitDone, code, stderr)
	work := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(work, "told"), []byte(told), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(work, "my harbour.jpg"), nil, 0o600))
	before := map[string]string{"bash": "source ./told\n", "fish": "source ./told\n",
		// what zsh's own functions are asked for
		"zsh": "compdef() { : }\n_arguments() { print -rl -- \"$@\" }\n_describe() { print -rl -- $commands }\n" +
			"source ./told\n",
	}[shell]
	flags := map[string][]string{"bash": {"--norc"}, "fish": {"--no-config"}, "zsh": {"-f"}}[shell]
	run := exec.Command(path, append(flags, "-c", before+script)...)
	run.Dir = work
	run.Env = append(os.Environ(), "HOME="+work)
	out, err := run.CombinedOutput()
	require.NoError(t, err, string(out))
	return strings.Split(strings.TrimSuffix(string(out), "\n"), "\n"), true
}

// bashOffers is what bash offers for the last of the words.
func bashOffers(t *testing.T, words ...string) (offers []string, ok bool) {
	t.Helper()
	var quoted []string
	for _, w := range append([]string{"dropsheet"}, words...) {
		quoted = append(quoted, "'"+w+"'")
	}
	return inShell(t, "bash", "COMP_WORDS=("+strings.Join(quoted, " ")+")\nCOMP_CWORD=$((${#COMP_WORDS[@]}-1))\n"+
		"_dropsheet\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n")
}

func TestCompletionInBash(t *testing.T) {
	for _, c := range []struct{ words, want []string }{
		{[]string{"ma"}, []string{"make", "manual"}},
		{[]string{"size", "--print"}, []string{"--print-size", "--printer"}},
		{[]string{"size", "--fit", ""}, []string{"cover", "inside"}},
		{[]string{"size", "--fit", "=", "c"}, []string{"cover"}},
		{[]string{"make", "--ppi", ""}, []string{"auto"}},
		{[]string{"make", "--body", "le"}, []string{"level-rod"}},
		{[]string{"make", "--distance", ""}, []string{""}},
		{[]string{"make", "my"}, []string{"my harbour.jpg"}},
		{[]string{"proof", "--artwork", "my"}, []string{"my harbour.jpg"}},
		{[]string{"completion", "z"}, []string{"zsh"}},
		{[]string{"help", "com"}, []string{"completion"}},
	} {
		got, ok := bashOffers(t, c.words...)
		if !ok {
			return
		}
		require.Equal(t, c.want, got, c.words)
	}
	for _, k := range commands {
		want := []string{"--help"}
		flagsOf(k).VisitAll(func(f *pflag.Flag) { want = append(want, "--"+f.Name) })
		got, _ := bashOffers(t, k.name, "--")
		require.ElementsMatch(t, want, got, k.name)
	}
}

func TestCompletionInFish(t *testing.T) {
	for line, want := range map[string][]string{
		"dropsheet ma":              {"make", "manual"},
		"dropsheet size --print":    {"--print-size", "--printer"},
		"dropsheet size --fit ":     {"cover", "inside"},
		"dropsheet proof size --dr": {"--drop-at"},
		"dropsheet make my":         {"my harbour.jpg"},
		"dropsheet completion ":     {"bash", "fish", "zsh"},
	} {
		lines, ok := inShell(t, "fish", "complete -C "+"'"+line+"'\n")
		if !ok {
			return
		}
		var got []string
		for _, l := range lines {
			word, _, _ := strings.Cut(l, "\t")
			got = append(got, strings.ReplaceAll(word, `\ `, " "))
		}
		slices.Sort(got)
		require.Equal(t, want, got, line)
	}
}

func TestCompletionInZsh(t *testing.T) {
	for _, c := range []struct{ words, want string }{
		{"dropsheet ''", "make:the whole job into a folder"},
		{"dropsheet size ''", "--fit=[cover"},
		{"dropsheet size ''", ":cover|inside:(cover inside)"},
		{"dropsheet size ''", "*--lamp=[where a lamp stands"},
		{"dropsheet make ''", "--level[print darker"},
		{"dropsheet make ''", "*:file:_files"},
		{"dropsheet completion ''", "*:shell:(bash zsh fish)"},
	} {
		lines, ok := inShell(t, "zsh", "words=("+c.words+")\nCURRENT=$#words\n_dropsheet\n")
		if !ok {
			return
		}
		require.Contains(t, strings.Join(lines, "\n"), c.want)
	}
}

// The page for man has every command with every flag, and man's own program finds nothing wrong with it.
func TestManual(t *testing.T) {
	page, stderr, code := dropsheet(t, "manual")
	require.Equal(t, exitDone, code, stderr)
	for _, k := range commands {
		_, about, found := strings.Cut(page, ".SS "+k.name+"\n")
		require.True(t, found, k.name)
		about, _, _ = strings.Cut(about, ".SS ")
		flagsOf(k).VisitAll(func(f *pflag.Flag) {
			require.Contains(t, about, `\fB\-\-`+strings.ReplaceAll(f.Name, "-", `\-`)+`\fR`, k.name)
		})
	}
	if path, err := exec.LookPath("groff"); err == nil {
		run := exec.Command(path, "-man", "-Tascii", "-ww", "-z")
		run.Stdin = strings.NewReader(page)
		out, err := run.CombinedOutput()
		require.NoError(t, err)
		require.Empty(t, string(out))
	}
}

func TestCompletionInWrongWords(t *testing.T) {
	for _, words := range [][]string{{"completion"}, {"completion", "sh"}, {"completion", "bash", "zsh"},
		{"manual", "x"}} {
		stdout, stderr, code := dropsheet(t, words...)
		require.Equal(t, exitWrongWords, code)
		require.Empty(t, stdout)
		require.NotEmpty(t, stderr)
	}
}
