package specs_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/parse/v2"
	"github.com/tdewolff/parse/v2/css"
)

// declaration is a property of a style sheet with its value, "padding" and
// "1rem 0".
type declaration struct{ property, value string }

func declarations(t *testing.T, source string) []declaration {
	t.Helper()
	var list []declaration
	p := css.NewParser(parse.NewInputString(source), false)
	for {
		switch kind, _, data := p.Next(); kind {
		case css.ErrorGrammar:
			if p.HasParseError() {
				t.Fatal(p.Err())
			}
			return list
		case css.DeclarationGrammar:
			property, value := string(data), ""
			for _, token := range p.Values() {
				value += string(token.Data)
			}
			list = append(list, declaration{property, value})
		}
	}
}

var (
	sideOfProperty = regexp.MustCompile(`(^|-)(left|right)(-|$)`)
	sideOfValue    = regexp.MustCompile(`(^|[\s/,])(left|right)([\s/,]|$)`)
	// The edges of a phone are where they are, whatever is read on it.
	edgeOfPhone = regexp.MustCompile(`env\(safe-area-inset-(left|right)\)`)
)

// physical reports whether a declaration means left or right where it should
// mean where a line of text begins or ends.
func (d declaration) physical() bool {
	if sideOfProperty.MatchString(d.property) || sideOfValue.MatchString(d.value) {
		return true
	}
	values := topLevel(d.value)
	switch {
	case d.property == "border-radius":
		return len(values) > 1
	case slices.Contains([]string{"margin", "padding", "inset", "border-width", "border-style", "border-color"}, d.property) && len(values) == 4:
		return values[1] != values[3] && !edgeOfPhone.MatchString(values[1]+values[3])
	}
	return false
}

// topLevel cuts a value at its blanks, but for those in brackets.
func topLevel(value string) []string {
	depth := 0
	return strings.FieldsFunc(value, func(r rune) bool {
		depth += strings.Count("(", string(r)) - strings.Count(")", string(r))
		return r == ' ' && depth == 0
	})
}

// What is laid out in the direction of the text turns round with it in a
// language that is written from right to left.
func TestStyle_IsLogical(t *testing.T) {
	seen := 0
	for _, path := range filesOf(t, ".css", "static/app") {
		for _, d := range declarations(t, readText(t, path)) {
			seen++
			if d.physical() {
				t.Errorf("%s: %s: %s is for one direction of writing: use -inline-start, -inline-end, start or end", path, d.property, d.value)
			}
		}
	}
	if seen < 500 {
		t.Errorf("only %d declarations were found", seen)
	}
}

func TestDeclaration_Physical(t *testing.T) {
	const source = `
		a { margin-left: 1px; border-top-right-radius: 0; left: 0; scroll-padding-right: 1px }
		a { text-align: right; float: left; background: left / 2px no-repeat url(a.png) }
		a { margin: 0 1px 0 2px; inset: 0 auto auto 0; border-radius: 1px 0; padding: 0 calc(1px + 2px) 0 0 }`
	const other = `
		a { margin-inline-start: 1px; border-start-end-radius: 0; inset-inline: 0; text-align: end }
		a { margin: 0 1px 2px; padding: 1px calc(1px + 2px) 2px calc(1px + 2px); border-radius: 50% }
		a { padding: 0 env(safe-area-inset-right) 0 env(safe-area-inset-left); content: "left"; --left: 1px; color: red }`
	for want, text := range map[bool]string{true: source, false: other} {
		for _, d := range declarations(t, text) {
			if d.physical() != want {
				t.Errorf("%s: %s is physical: %v, want %v", d.property, d.value, !want, want)
			}
		}
	}
}
