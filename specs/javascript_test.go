package specs_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/parse/v2"
	"github.com/tdewolff/parse/v2/js"
)

// jsText is a string of a JavaScript file, as it is written; a template has each
// ${...} replaced by a NUL.
type jsText struct {
	text string
	tag  string // "html" of html`...`
}

// script is what a JavaScript file says, and which modules it loads before it runs.
type script struct {
	texts   []jsText
	imports []string
}

// readScript reads a JavaScript file; one that is none stops the test.
func readScript(t *testing.T, source string) *script {
	t.Helper()
	tree, err := js.Parse(parse.NewInputString(source), js.Options{})
	if err != nil {
		t.Fatalf("no JavaScript: %v", err)
	}
	s := &script{}
	js.Walk(s, tree)
	return s
}

// Enter notes what a node of the syntax tree says by itself.
func (s *script) Enter(node js.INode) js.IVisitor {
	switch n := node.(type) {
	case *js.LiteralExpr:
		if n.TokenType == js.StringToken {
			s.texts = append(s.texts, jsText{text: unquoted(n.Data)})
		}
	case *js.TemplateExpr:
		s.texts = append(s.texts, template(n))
	case *js.ImportStmt:
		s.imports = append(s.imports, unquoted(n.Module))
	case *js.ExportStmt:
		if n.Module != nil {
			s.imports = append(s.imports, unquoted(n.Module))
		}
	}
	return s
}

// Exit does nothing: see Enter.
func (s *script) Exit(js.INode) {}

// template joins a template's parts, which come with their marks: "`a ${", "} b`".
func template(n *js.TemplateExpr) jsText {
	var found jsText
	if n.Tag != nil {
		found.tag = n.Tag.String()
	}
	for _, part := range n.List {
		found.text += string(part.Value[1:len(part.Value)-2]) + "\x00"
	}
	found.text += unquoted(n.Tail)
	return found
}

func unquoted(literal []byte) string { return string(literal[1 : len(literal)-1]) }

func TestReadScript(t *testing.T) {
	got := readScript(t, "import { html } from './a.js';\nexport * from \"./b.js\";\n"+
		"// 'no'\n/* \"no\" */ const a = 'it\\'s'; b = x / 2; r = /'[/\"]/g; later = () => import('./c.js');\n"+
		"f(`one ${g({ a: \"two\", 'b c': 1 }, html`<p title='three'>${c} four</p>`)} five`); // `no`")
	want := []jsText{{`it\'s`, ""}, {"./c.js", ""}, {"one \x00 five", ""}, {"two", ""}, {"b c", ""}, {"<p title='three'>\x00 four</p>", "html"}}
	if !slices.Equal(got.texts, want) {
		t.Errorf("texts %q, want %q", got.texts, want)
	}
	if want := "./a.js ./b.js"; strings.Join(got.imports, " ") != want {
		t.Errorf("imports %q, want %q", got.imports, want)
	}
}
