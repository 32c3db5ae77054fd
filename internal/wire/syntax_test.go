package wire

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"
)

// outline writes a tree token by token, as theirs does.
func (n *node) outline(b *strings.Builder) {
	b.WriteByte(' ')
	switch n.kind {
	case kindObject:
		b.WriteByte('{')
		for child := n.first; child != nil; child = child.next {
			b.WriteString(" " + child.name)
			child.outline(b)
		}
		b.WriteString(" }")
	case kindArray:
		b.WriteByte('[')
		for child := n.first; child != nil; child = child.next {
			child.outline(b)
		}
		b.WriteString(" ]")
	case kindTrue:
		b.WriteString("true")
	case kindFalse:
		b.WriteString("false")
	case kindNull:
		b.WriteString("null")
	default:
		b.WriteString(n.text)
	}
}

// flaws are those of a tree.
func (n *node) flaws(in map[flaw]bool) {
	in[n.flaw] = true
	for child := n.first; child != nil; child = child.next {
		child.flaws(in)
	}
}

// theirs outlines a text as jsontext reads it, and whether it does. Halves of surrogate
// pairs become U+FFFD, as here.
func theirs(in []byte, twice bool) (string, bool) {
	var b strings.Builder
	dec := jsontext.NewDecoder(bytes.NewReader(in), jsontext.AllowInvalidUTF8(true), jsontext.AllowDuplicateNames(twice))
	values := 0
	for {
		token, err := dec.ReadToken()
		if err == io.EOF {
			return b.String(), values == 1
		}
		if err != nil {
			return "", false
		}
		b.WriteString(" " + token.String())
		if dec.StackDepth() == 0 {
			values++
		}
	}
}

func compare(t *testing.T, in []byte) {
	t.Helper()
	root, bad := parse(in)
	if bad != nil && bad[0].Code == "too-much" {
		return // a bound that is ours
	}
	want, ok := theirs(in, true)
	ok = ok && utf8.Valid(in) // they let raw bytes pass with the halves
	if ok != (bad == nil) {
		t.Fatalf("%q: here %v, jsontext reads it: %v", in, bad, ok)
	}
	if !ok {
		return
	}
	flaws := map[flaw]bool{}
	root.flaws(flaws)
	if !flaws[tooDeep] {
		var b strings.Builder
		root.outline(&b)
		if b.String() != want {
			t.Fatalf("%q: read as %q, jsontext reads %q", in, b.String(), want)
		}
		if _, once := theirs(in, false); once == flaws[nameTwice] && !flaws[tooLong] {
			t.Fatalf("%q: a name twice: %v, to jsontext %v", in, flaws[nameTwice], !once)
		}
	}
}

// Texts at the edges of RFC 8259 and RFC 7493, the valid and the others: read
// or refused as by jsontext, token by token.
var edges = []string{
	``, ` `, `null`, `true`, `false`, `tru`, `truex`, `nul`, `"`, `""`, `"\`, `"\u`, `"\u00`, `"\u00e9"`, `"\u00E9"`, `"\u00g0"`,
	`"\ud834\udd1e"`, `"\ud834"`, `"\udd1e"`, `"\ud834\u0041"`, `"\ud834\ud834"`, `"\ud834x"`, `"\"\\\/\b\f\n\r\t"`, `"\a"`, `"\U0041"`,
	"\"\u00e9\"", "\"\xc3\"", "\"\xc3\xa9\xff\"", "\"\xed\xa0\x80\"", "\"\xf4\x90\x80\x80\"", "\"\xc0\x80\"", "\"\x00\"", "\"\x1f\"", "\"\x7f\"", "\"\ufffd\"",
	`0`, `-0`, `-`, `00`, `01`, `-01`, `1.`, `.1`, `1.0`, `1e5`, `1E+5`, `1e-5`, `1e`, `1e+`, `+1`, `0x1`, `1 2`, `12a`, `NaN`, `-Infinity`, `1e999`,
	`[]`, `[ ]`, `[1]`, `[1,2]`, `[1,]`, `[,1]`, `[1 2]`, `[1,,2]`, `[`, `[1`, `[1,`, `]`, `[[]]`, `[]]`, `[}`,
	`{}`, `{ }`, `{"a":1}`, `{"a" : 1 , "b" : [ ] }`, `{"a":1,}`, `{,}`, `{"a"}`, `{"a":}`, `{"a":1 "b":2}`, `{a:1}`, `{'a':1}`, `{1:1}`, `{"a":1,"a":2}`,
	`{"a":1,"\u0061":2}`, `{"":0}`, `{`, `{"a"`, `{"a":`, `{"a":1`, `{"a":1,`, `{]`, `{"a":{"a":{"a":[{"a":1}]}}}`, `{"a":[{"b":1,"b":1}]}`,
	" \t\r\n{\"a\"\r:\t1\n} ", "\u00a0{}", "\ufeff{}", "{}\x00", `{}//`, `/**/{}`, "{\"\xff\":1}",
	`{"\ud800":1,"\udfff":2}`, `"\ud834\ud834\udd1e"`, `"\ud834\u00"`, `"\ud834\n"`, `"\ud834\`, `["\ud834","\udd1e"]`,
	deep(`[`, `]`, 200), deep(`{"a":[1,`, `,{"b":2}]}`, 100), deep(`[`, `]`, 200) + `]`, deep(`[`, `,]`, 100), deep(`{"a":`, `}`, 100), deep(`{"a" `, `}`, 100),
	deep(`[[],{},"x\n", -1.5e3,`, `, {"" : null}, true ]`, 60), deep(`[`, `}`, 60), deep(`[1 `, `]`, 60), deep(`[{"x":1,}`, `]`, 60), deep("[\"\xff\",", `]`, 60), deep(`[`, ``, 60),
	// The examples of RFC 8259, section 13.
	`{"Image":{"Width":800,"Height":600,"Title":"View from 15th Floor","Thumbnail":{"Url":"http://www.example.com/image/481989943","Height":125,"Width":100},"Animated":false,"IDs":[116,943,234,38793]}}`,
	`[{"precision":"zip","Latitude":37.7668,"Longitude":-122.3959,"Country":"US"},{"precision":"zip","Latitude":37.371991,"Country":"US"}]`,
	`"Hello world!"`, `42`,
}

// deep nests nothing so many times.
func deep(before, after string, times int) string {
	return strings.Repeat(before, times) + "0" + strings.Repeat(after, times)
}

func TestParse_AsJSONText(t *testing.T) {
	for _, in := range edges {
		compare(t, []byte(in))
	}
}

func FuzzParse(f *testing.F) {
	for _, in := range edges {
		f.Add([]byte(in))
	}
	f.Fuzz(func(t *testing.T, in []byte) { compare(t, in) })
}

// A text is quoted as jsontext quotes it.
func TestWriter_Quotes(t *testing.T) {
	for r := rune(0); r < 0x3000; r++ {
		s := "a" + string(r) + "b"
		w := &writer{}
		w.string(s)
		want, err := jsontext.AppendQuote(nil, s)
		if err != nil || !bytes.Equal(w.text, want) {
			t.Errorf("%q is quoted as %s, want %s (%v)", s, w.text, want, err)
		}
	}
}

func TestWriter_NotUTF8(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a text that is not UTF-8 was written")
		}
	}()
	(&writer{}).string("a\xff")
}
