package specs_test

import (
	"regexp"
	"strings"
	"testing"
)

// jsText is a string of a JavaScript file; a template has each ${...} replaced
// by a NUL.
type jsText struct {
	text string
	tag  string // "html" of html`...`
}

// jsTexts finds the strings of a JavaScript file, comments and regular
// expressions left out. It knows as much of the language as our page uses.
func jsTexts(source string) []jsText {
	s := scanner{source: source}
	s.code(false)
	return s.found
}

type scanner struct {
	source string
	at     int
	found  []jsText
}

// code reads code up to its end, or up to the brace that closes a ${.
func (s *scanner) code(embedded bool) {
	depth := 0
	for s.at < len(s.source) {
		rest := s.source[s.at:]
		switch c := rest[0]; {
		case strings.HasPrefix(rest, "//"):
			s.skip(rest, "\n")
		case strings.HasPrefix(rest, "/*"):
			s.skip(rest, "*/")
		case c == '\'' || c == '"':
			s.quoted(c)
		case c == '`':
			s.template()
		case c == '/' && s.startsRegexp():
			s.regexp()
		case c == '}' && depth == 0 && embedded:
			s.at++
			return
		default:
			depth += strings.Count(rest[:1], "{") - strings.Count(rest[:1], "}")
			s.at++
		}
	}
}

func (s *scanner) skip(rest, end string) {
	n := strings.Index(rest, end)
	if n < 0 {
		n = len(rest) - len(end)
	}
	s.at += n + len(end)
}

func (s *scanner) quoted(mark byte) {
	start := s.at + 1
	for s.at++; s.at < len(s.source) && s.source[s.at] != mark; s.at++ {
		if s.source[s.at] == '\\' {
			s.at++
		}
	}
	s.found = append(s.found, jsText{text: s.source[start:min(s.at, len(s.source))]})
	s.at++
}

var tagBefore = regexp.MustCompile(`(\w+)$`)

func (s *scanner) template() {
	tag := tagBefore.FindString(s.source[max(0, s.at-10):s.at])
	var text strings.Builder
	for s.at++; s.at < len(s.source) && s.source[s.at] != '`'; {
		switch {
		case strings.HasPrefix(s.source[s.at:], "${"):
			s.at += 2
			s.code(true)
			text.WriteByte(0)
			continue
		case s.source[s.at] == '\\':
			s.at++
		}
		text.WriteByte(s.source[s.at])
		s.at++
	}
	s.at++
	s.found = append(s.found, jsText{text.String(), tag})
}

// startsRegexp: behind a value a slash divides, elsewhere it opens an expression.
func (s *scanner) startsRegexp() bool {
	before := strings.TrimRight(s.source[:s.at], " \n")
	return before == "" || strings.ContainsAny(before[len(before)-1:], "(,=:!&|?{};") || strings.HasSuffix(before, "return")
}

func (s *scanner) regexp() {
	class := false
	for s.at++; s.at < len(s.source) && (class || s.source[s.at] != '/'); s.at++ {
		switch s.source[s.at] {
		case '\\':
			s.at++
		case '[':
			class = true
		case ']':
			class = false
		}
	}
	s.at++
}

func TestJSTexts(t *testing.T) {
	source := "// 'no'\n/* \"no\" */ const a = 'it\\'s'; b = x / 2; r = /'[/\"]/g;\n" +
		"f(`one ${g({ a: \"two\" }, html`<p title='three'>${c} four</p>`)} five`); // `no`"
	want := []jsText{{`it\'s`, ""}, {"two", ""}, {"<p title='three'>\x00 four</p>", "html"}, {"one \x00 five", ""}}
	got := jsTexts(source)
	if len(got) != len(want) {
		t.Fatalf("got %q, want %q", got, want)
	}
	for i := range got {
		if got[i] != want[i] {
			t.Errorf("text %d: got %q, want %q", i, got[i], want[i])
		}
	}
}
