package wire_test

import (
	"slices"
	"strings"
	"testing"

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

// A text that is no JSON has one finding, which says where it breaks.
func TestRead_NotJSON(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{``, "not-json / refuse byte=0"},
		{` `, "not-json / refuse byte=1"},
		{`{`, "not-json / refuse byte=1"},
		{`{"text":"x"`, "not-json / refuse byte=11"},
		{`{"text":"x"}}`, "not-json / refuse byte=12"},
		{`{"text":"x"} {}`, ""},
		{`{"text":}`, ""},
		{`{'text':1}`, ""},
		{`{"text":"x",}`, ""},
		{`{"text":01}`, ""},
		{`{"number":NaN}`, ""},
		{"{\"text\":\"a\nb\"}", ""},
		{`{"text":"\x"}`, ""},
		{`{"text":"\ud800"}`, ""},
		{"{\"text\":\"\xff\"}", ""},
		{"{\"\xff\":1}", ""},
		{"\ufeff{}", ""},
		{`{} // remark`, ""},
	} {
		var e everything
		got := codes(wire.Read([]byte(c.in), &e))
		if len(got) != 1 || !strings.HasPrefix(got[0], "not-json /") || c.want != "" && got[0] != c.want {
			t.Errorf("Read(%q): got %q, want not-json alone: %s", c.in, got, c.want)
		}
	}
}

func TestRead_NameTwice(t *testing.T) {
	for _, in := range []string{`{"text":"a","text":"b"}`, `{"text":"a","\u0074ext":"b"}`, `{"map":{"a":"1","a":"1"}}`} {
		var e everything
		got := codes(wire.Read([]byte(in), &e))
		if len(got) != 1 || !strings.HasPrefix(got[0], "name-twice /") {
			t.Errorf("Read(%s): got %q, want name-twice", in, got)
		}
	}
}

// Inputs that are too much for a phone are refused at once.
func TestRead_Limits(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"as deep as allowed", `{"wat":` + nested(wire.MaxDepth) + `}`, "unknown-member"},
		{"too deep", `{"wat":` + nested(wire.MaxDepth+1) + `}`, "too-much"},
		{"a MiB of brackets", strings.Repeat("[", 1<<20), "too-much"},
		{"a MiB of objects", strings.Repeat(`{"a":`, 1<<20/5), "too-much"},
		{"as many values as allowed", `{"wat":[0` + strings.Repeat(",0", wire.MaxValues-3) + `]}`, "unknown-member"},
		{"too many values", `{"wat":[0` + strings.Repeat(",0", wire.MaxValues-2) + `]}`, "too-much"},
		{"as long as allowed", `{"text":"` + strings.Repeat("x", wire.MaxText) + `"}`, ""},
		{"too long", `{"text":"` + strings.Repeat("x", wire.MaxText+1) + `"}`, "text-too-long"},
		{"a MiB string", `{"text":"` + strings.Repeat("x", 1<<20) + `"}`, "text-too-long"},
		{"a MiB number", `{"number":` + strings.Repeat("1", 1<<20) + `}`, "text-too-long"},
		{"a MiB name", `{"` + strings.Repeat("x", 1<<20) + `":1}`, "text-too-long"},
	} {
		t.Run(c.name, func(t *testing.T) {
			e := everything{Inner: inner{ID: "x"}}
			list := wire.Read([]byte(c.in), &e)
			switch {
			case c.want == "" && len(list) > 0:
				t.Errorf("got %q, want nothing", codes(list))
			case c.want != "" && (len(list) != 1 || list[0].Code != c.want):
				t.Errorf("got %.200q, want %s", codes(list), c.want)
			case len(list) > 0 && len(list[0].Where) > 4*wire.MaxText:
				t.Errorf("the finding's place has %d bytes", len(list[0].Where))
			}
		})
	}
}

func nested(depth int) string {
	return strings.Repeat("[", depth) + strings.Repeat("]", depth)
}
