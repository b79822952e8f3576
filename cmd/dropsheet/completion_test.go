package main

import (
	"fmt"
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
	before := map[string]string{"bash": "source ./told\n", "fish": "source ./told\n"}[shell]
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

// typedInZsh types each of some lines into a zsh of its own, as on a terminal, has each completed and prints what it is
// then: zshmodules(1), zpty, and zshzle(1).
const typedInZsh = `zmodload zsh/zpty
zpty -b inner zsh -f -i
until_told() { # so many answers are there, while what is shown is read away
	local i shown
	for i in {1..1500}; do
		while zpty -r -t inner shown 2>/dev/null; do :; done
		[[ -e answers && $(wc -l <answers) -ge $1 ]] && return
		sleep 0.02
	done
	exit 4
}
zpty -w -n inner $'PS1= RPS1= TERM=vt100; setopt no_beep; autoload -Uz compinit && compinit -u -D; source ./told
show() { zle complete-word; print -r -- "$BUFFER" >>answers }; zle -N show; bindkey "^T" show; print ready >answers\n'
until_told 1
n=1
for line in $typed; do
	zpty -w -n inner $'\025'"$line"$'\024' # delete the line before, type, complete
	until_told $((++n))
done
zpty -d inner
tail -n +2 answers
`

func TestCompletionInZsh(t *testing.T) {
	cases := []struct{ typed, want string }{
		{"mak", "make "},
		{"size --print", "size --print"}, // or --printer
		{"size --print-s", "size --print-size="},
		{"size --fit=c", "size --fit=cover "},
		{"size --fit c", "size --fit cover "},
		{"make --ppi=", "make --ppi=auto "},
		{"make --lev", "make --level "},
		{"make --lamp=1m,1m,1m --lamp-l", "make --lamp=1m,1m,1m --lamp-lux="},
		{"make --lamp-lux=1 --lamp-l", "make --lamp-lux=1 --lamp-lux="},
		{"make my", `make my\ harbour.jpg `},
		{"proof --artwork=my", `proof --artwork=my\ harbour.jpg `},
		{"completion z", "completion zsh "},
		{"help com", "help completion "},
	}
	var typed strings.Builder
	var want []string
	for _, c := range cases {
		fmt.Fprintf(&typed, " 'dropsheet %s'", c.typed)
		want = append(want, "dropsheet "+c.want)
	}
	got, ok := inShell(t, "zsh", "typed=("+typed.String()+")\n"+typedInZsh)
	if ok {
		require.Equal(t, want, got)
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
	if path, err := exec.LookPath("mandoc"); err == nil {
		run := exec.Command(path, "-T", "lint", "-W", "warning")
		run.Stdin = strings.NewReader(page)
		out, _ := run.CombinedOutput() // a code for the one thing that it finds: the page has no date, since no file has
		for line := range strings.Lines(string(out)) {
			require.Contains(t, line, "WARNING: missing date")
		}
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
