//go:build !wasm

package wire_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/wire"
)

// lines names more than everything does: points, which are never read, rows, which
// are never written, and a member under a condition.
type lines struct {
	points    []float64
	condition bool
	required  everything
}

func (l *lines) Members(m *wire.Members) {
	m.Floats("points", l.points)
	if l.condition || m.Describing() {
		m.Bool("sometimes", &l.condition, wire.Required)
	}
	wire.List(m, "several", &l.required.Several, wire.Required)
	wire.Texts(m, "texts", &l.required.Texts, wire.Required)
}

type rows struct{ list []inner }

func (r *rows) Members(m *wire.Members) {
	m.Rows("rows", func(n int) []wire.Record {
		r.list = make([]inner, n)
		return []wire.Record{&r.list[0]}
	})
}

// described writes each member as a line.
func described(r wire.Record) (list []string) {
	for _, d := range wire.Describe(r) {
		line := fmt.Sprint(d.Name, " ", d.Kind)
		for _, flag := range []struct {
			name string
			set  bool
		}{{"many", d.Many}, {"required", d.Required}, {"always", d.Always}} {
			if flag.set {
				line += " " + flag.name
			}
		}
		if d.Text != nil {
			line += fmt.Sprintf(" %T", d.Text)
		}
		if d.Record != nil {
			line += fmt.Sprintf(" %T", d.Record)
		}
		list = append(list, line)
	}
	return list
}

func TestDescribe(t *testing.T) {
	for _, tt := range []struct {
		record wire.Record
		want   []string
	}{
		{&everything{}, []string{
			"text text string",
			"kind text wire_test.kind",
			"yes bool",
			"number number",
			"count integer",
			"inner object always *wire_test.inner",
			"maybe object *wire_test.inner",
			"several object many *wire_test.inner",
			"texts text many wire_test.kind",
			"map text map",
			"found object many *wire.findingRecord",
		}},
		{&inner{}, []string{"id text required always string", "size number"}},
		{&lines{}, []string{"points number many", "sometimes bool required",
			"several object many required *wire_test.inner", "texts text many required wire_test.kind"}},
		{&rows{}, []string{"rows object many *wire_test.inner"}},
	} {
		if got := described(tt.record); !slices.Equal(got, tt.want) {
			t.Errorf("%T is described as\n%s\nwant\n%s", tt.record, strings.Join(got, "\n"), strings.Join(tt.want, "\n"))
		}
	}
}

// What is always written is there when nothing is in it, and nothing else is; what
// is required is missed, and nothing else.
func TestDescribe_WhatIsAbsent(t *testing.T) {
	for _, r := range []wire.Record{&everything{}, &inner{}} {
		text := string(wire.Write(r))
		missed := map[string]bool{}
		for _, f := range wire.Read([]byte("{}"), r) {
			missed[f.Where] = true
		}
		for _, d := range wire.Describe(r) {
			if written := strings.Contains(text, `"`+d.Name+`":`); written != d.Always {
				t.Errorf("%T %s: always %v, written %v in %s", r, d.Name, d.Always, written, text)
			}
			if missed["/"+d.Name] != d.Required {
				t.Errorf("%T %s: required %v, missed %v", r, d.Name, d.Required, missed)
			}
		}
	}
}

// piece is a place in a text.
type piece struct{ from int }

func (p *piece) Members(m *wire.Members) { m.Offset("from", &p.from) }

// A place in a text is written where it is the first, and need not be read.
func TestOffset(t *testing.T) {
	var p piece
	if got := string(wire.Write(&p)); got != `{"from":0}` {
		t.Errorf("written %s", got)
	}
	if list := wire.Read([]byte("{}"), &p); len(list) > 0 {
		t.Errorf("missed: %v", list)
	}
	if list := wire.Read([]byte(`{"from":7}`), &p); len(list) > 0 || p.from != 7 {
		t.Errorf("read %d, %v", p.from, list)
	}
}

// An element of a list that knows its own members is asked for them.
func TestDescribe_Elements(t *testing.T) {
	e := everything{Several: []inner{{"first", 1}}}
	for _, d := range wire.Describe(&e) {
		if d.Name == "several" && d.Record != wire.Record(&e.Several[0]) {
			t.Errorf("the element is %v", d.Record)
		}
	}
}
