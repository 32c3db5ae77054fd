package wire_test

import (
	"bytes"
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// everything is a record with a member of every type.
type everything struct {
	Text    string
	Kind    kind
	Yes     bool
	Number  float64
	Count   int
	Inner   inner
	Maybe   *inner
	Several []inner
	Texts   []kind
	Map     map[string]string
	Found   []finding.Finding
}

type kind string

func (e *everything) Members(m *wire.Members) {
	m.String("text", &e.Text)
	wire.Text(m, "kind", &e.Kind)
	m.Bool("yes", &e.Yes)
	m.Float("number", &e.Number)
	m.Int("count", &e.Count)
	m.Object("inner", &e.Inner)
	wire.Optional(m, "maybe", &e.Maybe)
	wire.List(m, "several", &e.Several)
	wire.Texts(m, "texts", &e.Texts)
	m.TextMap("map", &e.Map)
	wire.Findings(m, "found", &e.Found)
}

type inner struct {
	ID   string
	Size float64
}

func (i *inner) Members(m *wire.Members) {
	m.String("id", &i.ID, wire.Required)
	m.Float("size", &i.Size)
}

func draw(t *rapid.T) everything {
	in := func(label string) inner {
		return inner{"i" + rapid.String().Draw(t, label), rapid.Float64Range(-1e300, 1e300).Draw(t, label)}
	}
	e := everything{
		Text: rapid.String().Draw(t, "text"), Kind: kind(rapid.String().Draw(t, "kind")),
		Yes: rapid.Bool().Draw(t, "yes"), Number: rapid.Float64Range(-1e300, 1e300).Draw(t, "number"),
		Count: rapid.Int().Draw(t, "count"), Inner: in("inner"), Found: []finding.Finding{},
	}
	if rapid.Bool().Draw(t, "has maybe") {
		m := in("maybe")
		e.Maybe = &m
	}
	for range rapid.IntRange(0, 3).Draw(t, "several") {
		e.Several = append(e.Several, in("one"))
	}
	for _, s := range rapid.SliceOfN(rapid.String(), 0, 3).Draw(t, "texts") {
		e.Texts = append(e.Texts, kind(s))
	}
	if m := rapid.MapOfN(rapid.String(), rapid.String(), 0, 3).Draw(t, "map"); len(m) > 0 {
		e.Map = m
	}
	for range rapid.IntRange(0, 2).Draw(t, "found") {
		e.Found = append(e.Found, finding.Finding{Code: "c", Where: "/a", Grade: finding.Doubt, Values: e.Map})
	}
	return e
}

// What is written reads back as it was, and writes the same bytes again.
func TestWrite_ReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := draw(t)
		text := wire.Write(&want)
		var got everything
		if list := wire.Read(text, &got); len(list) > 0 {
			t.Fatalf("reading %s: %v", text, list)
		}
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("%s reads back as\n%+v, want\n%+v", text, got, want)
		}
		if again := wire.Write(&got); !bytes.Equal(again, text) {
			t.Fatalf("written once %s, then %s", text, again)
		}
		if !json.Valid(text) {
			t.Fatalf("%s is no JSON to the standard library", text)
		}
	})
}

// Written text has no white space and leaves out what is empty and not required;
// names of a map are in order.
func TestWrite_Form(t *testing.T) {
	e := everything{Text: "a\"b\n<é>", Count: -1, Inner: inner{ID: "x"}, Map: map[string]string{"b": "2", "a": "1", "": ""}}
	want := `{"text":"a\"b\n<é>","count":-1,"inner":{"id":"x"},"map":{"":"","a":"1","b":"2"}}`
	if got := string(wire.Write(&e)); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got := string(wire.Write(&everything{})); got != `{"inner":{"id":""}}` {
		t.Errorf("an empty record is written as %s", got)
	}
}

// White space and the order of members don't matter to reading.
func TestRead_AnyOrder(t *testing.T) {
	var a, b everything
	first := wire.Read([]byte(`{"text":"x","count":3,"inner":{"id":"i","size":2}}`), &a)
	second := wire.Read([]byte(" {\n\t\"inner\": {\"size\": 2e0, \"id\": \"i\"}, \"count\": 3,\r\n\"text\": \"\\u0078\"} "), &b)
	if len(first)+len(second) > 0 || !reflect.DeepEqual(a, b) {
		t.Errorf("%+v %v, and %+v %v", a, first, b, second)
	}
}

func codes(list []finding.Finding) []string {
	var out []string
	for _, f := range list {
		out = append(out, f.Code+" "+f.Where+" "+string(f.Grade)+" "+values(f))
	}
	return out
}

func values(f finding.Finding) string {
	var s string
	for _, k := range slices.Sorted(maps.Keys(f.Values)) {
		s += k + "=" + f.Values[k]
	}
	return s
}
