package plantest

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"tidysump/internal/card"
	"tidysump/internal/shown"
	"tidysump/specs"
)

var catalogue = specs.Sentences()

var placeholder = regexp.MustCompile(`\{(\w+)\}`)

// Reporter is what a check of words needs of a test.
type Reporter interface {
	Helper()
	Errorf(format string, args ...any)
}

// Say checks that a sentence exists and that the values fill its placeholders;
// a value that is itself a word is filled from the others.
func Say(t Reporter, id string, values map[string]string) {
	t.Helper()
	sentence, ok := catalogue[id]
	if !ok {
		t.Errorf("the catalogue has no %q", id)
	}
	for _, m := range placeholder.FindAllStringSubmatch(sentence, -1) {
		value, filled := values[m[1]]
		if !filled {
			t.Errorf("%q: nothing fills {%s}, values %v", id, m[1], values)
		}
		if word, isWord := strings.CutPrefix(value, "@"); isWord {
			others := maps.Clone(values)
			delete(others, m[1])
			Say(t, word, others)
		}
	}
	for _, gap := range Gaps(id, values) {
		t.Errorf("%s", gap)
	}
}

// nameless are the words that say that something isn't known, and not what.
var nameless = []string{"@not-known", "@none-on-card"}

// alone reports whether a sentence ends in a value behind the name of what it is:
// "Thread: {thread}." reads right whatever the thread is.
func alone(sentence, mark string) bool {
	label, ends := strings.CutSuffix(strings.TrimRight(sentence, ".?;"), mark)
	name := placeholder.ReplaceAllString(label, "")
	return ends && (label == "" || strings.HasSuffix(label, ": ") && strings.ContainsFunc(name, unicode.IsLetter))
}

// sentenceEnd is a mark that ends a sentence or what reads as one, with the blank before the next.
var sentenceEnd = regexp.MustCompile(`[.?!;] `)

// Gaps tells where a sentence reads as if it were cut out with scissors: a value that is
// empty, or that only says that something isn't known in the middle of other words.
func Gaps(id string, values map[string]string) []string {
	var list []string
	for _, sentence := range strings.Split(sentenceEnd.ReplaceAllString(catalogue[id], "$0\n"), "\n") {
		sentence = strings.TrimSpace(sentence)
		for _, m := range placeholder.FindAllStringSubmatch(sentence, -1) {
			value, filled := values[m[1]]
			switch {
			case !filled:
			case strings.TrimSpace(value) == "" && !strings.Contains(sentence, `"`+m[0]+`"`):
				list = append(list, id+": {"+m[1]+"} is empty in "+sentence)
			case slices.Contains(nameless, value) && !alone(sentence, m[0]):
				list = append(list, id+": "+Text(sentence, values)+" "+sentence+" with "+m[1]+" "+value)
			}
		}
	}
	return list
}

// Text is a value as it is read in the default language: a word after "@" is filled
// from the values, anything else stands for itself. Of a word with forms it is that for
// "other".
func Text(value string, values map[string]string) string {
	id, isWord := strings.CutPrefix(value, "@")
	sentence, known := catalogue[id]
	if !isWord || !known {
		return value
	}
	return placeholder.ReplaceAllStringFunc(sentence, func(mark string) string {
		name := mark[1 : len(mark)-1]
		filling, filled := values[name]
		if !filled {
			return mark
		}
		others := maps.Clone(values)
		delete(others, name)
		return Text(filling, others)
	})
}

// SayFigure checks the words of a figure, and that it is either known or not.
func SayFigure(t Reporter, s shown.Figure) {
	t.Helper()
	Say(t, s.Name, nil)
	Say(t, "standing."+string(s.Standing), nil)
	for _, text := range s.Texts {
		if word, isWord := strings.CutPrefix(text, "@"); isWord {
			Say(t, word, s.Values)
		}
	}
	if word, isWord := strings.CutPrefix(s.Method, "@"); isWord {
		Say(t, word, nil)
	}
	if unknown := s.Standing == card.Unknown; unknown != (s.Lookup != "") || unknown != (len(s.Texts) == 0) {
		t.Errorf("figure %+v is known and unknown at once", s)
	}
	if s.Lookup != "" {
		Say(t, s.Lookup, nil)
	}
}
