package wire_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Each fault has its finding, with its place; reading goes on after it.
func TestRead_Faults(t *testing.T) {
	for _, c := range []struct {
		in   string
		want []string
	}{
		{`{"inner":{"id":"x"}}`, nil},
		{`{"inner":{"id":"x"},"text":null,"maybe":null,"several":null}`, nil},
		{`{"inner":{}}`, []string{"missing /inner/id refuse name=id"}},
		{`{"inner":{"id":null}}`, []string{"wrong-type /inner/id refuse want=string"}},
		{`{"text":1}`, []string{"wrong-type /text refuse want=string"}},
		{`{"yes":"true"}`, []string{"wrong-type /yes refuse want=boolean"}},
		{`{"yes":0}`, []string{"wrong-type /yes refuse want=boolean"}},
		{`{"number":"1"}`, []string{"wrong-type /number refuse want=number"}},
		{`{"number":1e999}`, []string{"number-too-large /number refuse "}},
		{`{"count":1.5}`, []string{"wrong-type /count refuse want=whole number"}},
		{`{"count":1e2}`, []string{"wrong-type /count refuse want=whole number"}},
		{`{"count":99999999999999999999}`, []string{"wrong-type /count refuse want=whole number"}},
		{`{"inner":[]}`, []string{"wrong-type /inner refuse want=object"}},
		{`{"several":{}}`, []string{"wrong-type /several refuse want=array"}},
		{`{"several":[{"id":"a"},{},3]}`, []string{"missing /several/1/id refuse name=id", "wrong-type /several/2 refuse want=object"}},
		{`{"texts":["a",1,null]}`, []string{"wrong-type /texts/1 refuse want=string", "wrong-type /texts/2 refuse want=string"}},
		{`{"map":{"a":1}}`, []string{"wrong-type /map/a refuse want=string"}},
		{`{"wat":1}`, []string{"unknown-member /wat refuse name=wat"}},
		{`{"a/b~c":1}`, []string{"unknown-member /a~1b~0c refuse name=a/b~c"}},
		{`{"text":1,"count":"x","wat":[]}`, []string{"wrong-type /text refuse want=string", "wrong-type /count refuse want=number", "unknown-member /wat refuse name=wat"}},
		{`[]`, []string{"wrong-type / refuse want=object"}},
		{`null`, []string{"wrong-type / refuse want=object"}},
		{`"text"`, []string{"wrong-type / refuse want=object"}},
	} {
		var e everything
		if got := codes(wire.Read([]byte(c.in), &e)); !slices.Equal(got, c.want) {
			t.Errorf("Read(%s):\n got %q\nwant %q", c.in, got, c.want)
		}
	}
}

// A text that is no JSON has one finding, which says where it breaks and what stands
// there.
func TestRead_NotJSON(t *testing.T) {
	long := strings.Repeat("é🛢", 100)
	for _, c := range []struct{ in, want string }{
		{``, "not-json-end / refuse line=1"},
		{" ", "not-json-end / refuse line=1"},
		{"{\n\n", "not-json-end / refuse line=1"},
		{"{\n\"text\":\n\"x\"", "not-json-end / refuse line=3"},
		{`{"text":"x"}}`, `not-json / refuse line=1near={"text":"x"}}`},
		{`{"text":"x"} {}`, `not-json / refuse line=1near="text":"x"} {}`},
		{`{"text":}`, `not-json / refuse line=1near={"text":}`},
		{"{\n  'text': 1,\n  \"yes\": true\n}", "not-json / refuse line=2near=  'text': 1,"},
		{"{\n\"text\":\"x\",\n}\n", `not-json / refuse line=3near=}`},
		{`{"text":01}`, `not-json / refuse line=1near={"text":01}`},
		{`{"number":NaN}`, `not-json / refuse line=1near={"number":NaN}`},
		{"{\"text\":\"a\nb\"}", `not-json / refuse line=1near={"text":"a`},
		{`{"text":"\x"}`, `not-json / refuse line=1near={"text":"\x"}`},
		{"{\"text\":\"\xff\"}", "not-json / refuse line=1near={\"text\":\"\ufffd\"}"},
		{"{\"\xff\":1}", "not-json / refuse line=1near={\"\ufffd\":1}"},
		{"\ufeff{}", "not-json / refuse line=1near=\ufeff{}"},
		{`{} // remark`, `not-json / refuse line=1near={} // remark`},
		{`{"text":"` + long + `"; "yes":true, "text":"` + long + `"}`, `not-json / refuse line=1near=🛢é🛢"; "yes":true, "text":"` + strings.Repeat("é🛢", 7) + `…`},
	} {
		var e everything
		got := codes(wire.Read([]byte(c.in), &e))
		if len(got) != 1 || got[0] != c.want {
			t.Errorf("Read(%q): got %q, want %q alone", c.in, got, c.want)
		}
	}
}

// Wherever a text breaks, what is said of it is fit for JSON and for a sentence.
func TestRead_NotJSONAnywhere(t *testing.T) {
	text := "{\"text\":\"né🛢\\ud834\",\n\"map\":{\"a\":[1.5e3,null]},\r\n\"yes\":true}"
	for at := range text {
		for _, in := range []string{text[:at], text[:at] + "\x00" + text[at:], text[:at] + "\xf0\x9f" + text[at+1:], text[:at] + "🛢" + text[at+1:]} {
			var e everything
			list := wire.Read([]byte(in), &e)
			if len(list) == 0 {
				continue // inside a text
			}
			near := list[0].Values["near"]
			said := list[0].Code != "not-json" || strings.TrimSpace(near) != "" && utf8.ValidString(near) && utf8.RuneCountInString(near) <= 41
			if !said || strings.HasPrefix(list[0].Code, "not-json") && list[0].Values["line"] == "" {
				t.Errorf("Read(%q): %+v", in, list[0])
			}
		}
	}
}

// A name that stands twice spoils the object that it stands in, where that is read.
func TestRead_NameTwice(t *testing.T) {
	for in, want := range map[string]string{
		`{"text":"a","text":"b"}`:                          "name-twice /text refuse name=text",
		`{"text":"a","\u0074ext":"b"}`:                     "name-twice /text refuse name=text",
		`{"inner":{"id":"x"},"map":{"a":"1","a":"1"}}`:     "name-twice /map/a refuse name=a",
		`{"several":[{"id":"a"},{"id":"b","id":"c"}]}`:     "name-twice /several/1/id refuse name=id",
		`{"wat":{"a":1,"a":2}}`:                            "unknown-member /wat refuse name=wat",
		`{"map":{` + manyNames(1000) + `,"n500":"again"}}`: "name-twice /map/n500 refuse name=n500",
		`{"map":{` + manyNames(1000) + `}}`:                "",
	} {
		e := everything{Inner: inner{ID: "x"}}
		if got := strings.Join(codes(wire.Read([]byte(in), &e)), "; "); got != want {
			t.Errorf("Read(%.80s): got %q, want %q", in, got, want)
		}
	}
}

func manyNames(n int) string {
	var names []string
	for i := range n {
		names = append(names, fmt.Sprintf(`"n%d":""`, i))
	}
	return strings.Join(names, ",")
}

// Half of a surrogate pair, which is what a page has cut a text to, is read as U+FFFD.
func TestRead_HalfACharacter(t *testing.T) {
	for in, want := range map[string]string{`a\ud83d`: "a\ufffd", `\udee2b`: "\ufffdb", `\ud83d\ud83d\udee2`: "\ufffd🛢", `\ud83d\u0041`: "\ufffdA"} {
		var e everything
		if list := wire.Read([]byte(`{"inner":{"id":"x"},"text":"`+in+`"}`), &e); len(list) > 0 || e.Text != want {
			t.Errorf("%s is read as %q %v, want %q", in, e.Text, list, want)
		}
	}
}

// What is too much for a phone is passed over, and refused where it is read and
// nowhere else.
func TestRead_Limits(t *testing.T) {
	x, deep := strings.Repeat("x", wire.MaxText), nested(wire.MaxDepth+1)
	for _, c := range []struct{ name, in, want string }{
		{"as deep as allowed", `{"wat":` + nested(wire.MaxDepth) + `}`, "unknown-member /wat"},
		{"too deep, and not read", `{"wat":` + nested(wire.MaxDepth+1) + `}`, "unknown-member /wat"},
		{"too deep in what is passed over", `{"text":"a","wat":{"a":` + deep + `,"b":` + x + `1}}`, "not-json /"},
		{"a MiB of brackets", strings.Repeat("[", 1<<20), "not-json-end /"},
		{"a MiB of brackets, closed", nested(1 << 20), "wrong-type /"},
		{"a MiB of brackets in a text", `{"text":` + nested(1<<20) + `}`, "wrong-type /text"},
		{"a MiB of objects", strings.Repeat(`{"a":`, 1<<20/5), "not-json-end /"},
		{"as many values as allowed", `{"wat":[0` + strings.Repeat(",0", wire.MaxValues-3) + `]}`, "unknown-member /wat"},
		{"too many values", `{"wat":[0` + strings.Repeat(",0", wire.MaxValues-2) + `]}`, "too-much /"},
		{"as long as allowed", `{"text":"` + x + `"}`, ""},
		{"too long", `{"text":"` + x + `x"}`, "text-too-long /text"},
		{"too long, escaped", `{"text":"\n` + x + `"}`, "text-too-long /text"},
		{"too long, and not read", `{"wat":"` + x + `x"}`, "unknown-member /wat"},
		{"too long in a list of texts", `{"texts":["a","` + x + `x"]}`, "text-too-long /texts/1"},
		{"too long in a map", `{"map":{"a":"` + x + `x"}}`, "text-too-long /map/a"},
		{"a name in a map", `{"map":{"` + x + `x":"a"}}`, "text-too-long /map"},
		{"too long in one of several", `{"several":[{"id":"` + x + `x"},{"id":"b"}]}`, "text-too-long /several/0/id"},
		{"a MiB string", `{"text":"` + strings.Repeat("x", 1<<20) + `"}`, "text-too-long /text"},
		{"a MiB number", `{"number":` + strings.Repeat("1", 1<<20) + `}`, "text-too-long /number"},
		{"a MiB name", `{"` + strings.Repeat("x", 1<<20) + `":1}`, "text-too-long /"},
	} {
		t.Run(c.name, func(t *testing.T) {
			e := everything{Inner: inner{ID: "x"}}
			list := wire.Read([]byte(c.in), &e)
			switch {
			case c.want == "" && len(list) > 0:
				t.Errorf("got %q, want nothing", codes(list))
			case c.want != "" && (len(list) != 1 || list[0].Code+" "+list[0].Where != c.want):
				t.Errorf("got %.200q, want %s", codes(list), c.want)
			case len(list) > 0 && len(list[0].Where) > 1000:
				t.Errorf("the finding's place has %d bytes", len(list[0].Where))
			}
		})
	}
}

// However much is wrong, what is told of it stays short, and refuses.
func TestRead_FindingsAreBounded(t *testing.T) {
	wrong := `{` + manyNames(50) + `}`
	for name, in := range map[string]string{
		"elements":         `{"several":[` + strings.Repeat(`{},`, 100_000) + `{}]}`,
		"unknown members":  `{` + manyNames(100_000) + `}`,
		"in one element":   `{"several":[{"id":"a"},` + wrong + `]}`,
		"texts":            `{"texts":[` + strings.Repeat(`0,`, 100_000) + `0]}`,
		"of each a little": `{"several":[` + strings.Repeat(wrong+`,`, 2000) + wrong + `]}`,
	} {
		e := everything{Inner: inner{ID: "x"}}
		list := wire.Read([]byte(in), &e)
		most := 5001
		if name == "in one element" {
			most = 10
		}
		if last := list[len(list)-1]; len(list) != most || last.Code != "more-findings" || last.Grade != finding.Refuse {
			t.Errorf("%s: %d findings, the last %+v", name, len(list), last)
		}
	}
}

func nested(depth int) string {
	return strings.Repeat("[", depth) + strings.Repeat("]", depth)
}

// apart is a record that keeps to itself what refuses it.
type apart struct {
	inner
	found []finding.Finding
}

func (a *apart) Unread(found []finding.Finding) { a.found = found }

type aparts struct {
	list  []apart
	maybe *apart
}

func (a *aparts) Members(m *wire.Members) {
	wire.List(m, "list", &a.list)
	wire.Optional(m, "maybe", &a.maybe)
}

// What refuses a record that keeps it to itself is handed to it, with places below it,
// and reported nowhere else.
func TestRead_Apart(t *testing.T) {
	var a aparts
	if list := wire.Read([]byte(`{"list":[{"id":"x"},{"id":3,"size":"y"},7,{"id":"z"}],"maybe":{}}`), &a); len(list) > 0 {
		t.Errorf("reported %q", codes(list))
	}
	want := [][]string{nil, {"wrong-type /id refuse want=string", "wrong-type /size refuse want=number"}, {"wrong-type  refuse want=object"}, nil}
	for n := range want {
		if got := codes(a.list[n].found); !slices.Equal(got, want[n]) {
			t.Errorf("element %d: %q, want %q", n, got, want[n])
		}
	}
	if a.list[3].ID != "z" || !slices.Equal(codes(a.maybe.found), []string{"missing /id refuse name=id"}) {
		t.Errorf("%+v, %+v", a.list, a.maybe)
	}
	if list := wire.Read([]byte(`{"list":7}`), &a); !slices.Equal(codes(list), []string{"wrong-type /list refuse want=array"}) {
		t.Errorf("no list: %q", codes(list))
	}
}
