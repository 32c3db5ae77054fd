package plantest

import (
	"maps"
	"regexp"
	"strings"

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
