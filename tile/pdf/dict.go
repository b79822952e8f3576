package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// dict is a dictionary of the file (ISO 32000-1, 7.3.7; clauses in this file are recalled from memory): its
// text between the brackets, and its entries as they are written.
type dict struct {
	text    string
	entries map[string]string // by key without the slash
}

// maxNesting is how deep dictionaries and arrays may nest; gofpdf writes four levels.
const maxNesting = 32

var errNotDict = errors.New("not a dictionary")

// parseDict reads the dictionary that data begins with.
func parseDict(data []byte) (dict, error) {
	rest := skipSpace(data)
	if !bytes.HasPrefix(rest, []byte("<<")) {
		return dict{}, errNotDict
	}
	rest = rest[2:]
	begin := rest
	entries := map[string]string{}
	for {
		rest = skipSpace(rest)
		if bytes.HasPrefix(rest, []byte(">>")) {
			return dict{text: string(begin[:len(begin)-len(rest)]), entries: entries}, nil
		}
		if len(rest) == 0 || rest[0] != '/' {
			return dict{}, fmt.Errorf("%w: a key is missing", errNotDict)
		}
		afterKey, err := skipObject(rest, 0)
		if err != nil {
			return dict{}, err
		}
		key := string(rest[1 : len(rest)-len(afterKey)])
		value, err := skipObject(afterKey, 0)
		if err != nil {
			return dict{}, err
		}
		// A reference, "3 0 R", is three words; the next key or the end begins with a delimiter.
		for next := skipSpace(value); len(next) > 0 && isRegular(next[0]); next = skipSpace(value) {
			value, _ = skipObject(next, 0)
		}
		entries[key] = strings.TrimSpace(string(afterKey[:len(afterKey)-len(value)]))
		rest = value
	}
}

// number returns an entry that is a whole number.
func (d dict) number(key string) (int, error) {
	n, err := strconv.Atoi(d.entries[key])
	if err != nil {
		return 0, fmt.Errorf("/%s is %q, not a number", key, d.entries[key])
	}
	return n, nil
}

// references returns the object numbers of an entry that is a reference or an array of them.
func (d dict) references(key string) ([]int, error) {
	words := strings.Fields(strings.Trim(d.entries[key], "[]"))
	var numbers []int
	for i := 0; i+2 < len(words); i += 3 {
		n, err := strconv.Atoi(words[i])
		if err != nil || words[i+1] != "0" || words[i+2] != "R" {
			return nil, fmt.Errorf("/%s holds %q, not a reference", key, strings.Join(words[i:i+3], " "))
		}
		numbers = append(numbers, n)
	}
	if len(numbers) == 0 || len(words)%3 != 0 {
		return nil, fmt.Errorf("/%s is %q, not a reference", key, d.entries[key])
	}
	return numbers, nil
}

// skipObject returns what follows the object that data begins with (ISO 32000-1, 7.2 and 7.3).
func skipObject(data []byte, depth int) ([]byte, error) {
	data = skipSpace(data)
	switch {
	case len(data) == 0:
		return nil, fmt.Errorf("%w: it doesn't end", errNotDict)
	case depth > maxNesting:
		return nil, fmt.Errorf("%w: nested too deep", errNotDict)
	case bytes.HasPrefix(data, []byte("<<")):
		return skipUntil(data[2:], ">>", depth)
	case data[0] == '[':
		return skipUntil(data[1:], "]", depth)
	case data[0] == '(':
		return skipString(data)
	case data[0] == '<':
		if end := bytes.IndexByte(data, '>'); end >= 0 {
			return data[end+1:], nil
		}
		return nil, fmt.Errorf("%w: a string doesn't end", errNotDict)
	case data[0] == '/':
		return skipRegular(data[1:]), nil
	case isRegular(data[0]):
		return skipRegular(data), nil
	}
	return nil, fmt.Errorf("%w: %q is out of place", errNotDict, data[0])
}

func skipUntil(data []byte, end string, depth int) ([]byte, error) {
	for {
		data = skipSpace(data)
		if bytes.HasPrefix(data, []byte(end)) {
			return data[len(end):], nil
		}
		var err error
		if data, err = skipObject(data, depth+1); err != nil {
			return nil, err
		}
	}
}

func skipString(data []byte) ([]byte, error) {
	open := 0
	for i := 0; i < len(data); i++ {
		switch data[i] {
		case '\\':
			i++
		case '(':
			open++
		case ')':
			if open--; open == 0 {
				return data[i+1:], nil
			}
		}
	}
	return nil, fmt.Errorf("%w: a string doesn't end", errNotDict)
}

func skipSpace(data []byte) []byte { return bytes.TrimLeft(data, "\x00\t\n\f\r ") }

func skipRegular(data []byte) []byte {
	for len(data) > 0 && isRegular(data[0]) {
		data = data[1:]
	}
	return data
}

func isRegular(c byte) bool { return !strings.ContainsRune("\x00\t\n\f\r ()<>[]{}/%", rune(c)) }
