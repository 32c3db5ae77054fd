package wire

import (
	"strconv"

	"tidysump/internal/finding"
)

// Record is a type that can name its members.
type Record interface{ Members(*Members) }

// Rule qualifies a member.
type Rule int

// Required: absence of the member is a finding "missing".
const Required Rule = 1

// Members reads, writes or describes the members of one object, in the order in
// which the record names them.
type Members struct {
	at        *node // nil when not reading
	out       *writer
	described *[]Member // nil when not describing
	report    *report
	next      *node // that stands after the one that was read last
	unknown   finding.Grade
}

// Read reads a JSON text into a record and returns all findings. When one of
// them refuses, the record holds what could be read.
func Read(in []byte, into Record) []finding.Finding {
	root, bad := parse(in)
	if bad != nil {
		return bad
	}
	rep := &report{}
	readObject(root, into, rep, finding.Refuse)
	return rep.findings
}

func readObject(at *node, into Record, rep *report, unknown finding.Grade) {
	if at.kind != kindObject {
		rep.add("wrong-type", at, "", finding.Refuse, "want", "object")
		return
	}
	if !rep.usable(at) {
		return
	}
	m := &Members{at: at, next: at.first, report: rep, unknown: unknown}
	into.Members(m)
	for n := at.first; n != nil; n = n.next {
		if !n.claimed {
			rep.add("unknown-member", n, "", m.unknown, "name", finding.Clip(n.name))
		}
	}
}

// Lenient makes unknown members of this object, and of all within it, a doubt
// and not a refusal: for records that another version may have written.
func (m *Members) Lenient() { m.unknown = finding.Doubt }

// Reading reports whether the members are being read.
func (m *Members) Reading() bool { return m.at != nil }

// find gives the member of that name, nil when there is none. Most stand in the order
// in which the record names them.
func (m *Members) find(name string) *node {
	for n := m.next; n != nil; n = n.next {
		if n.name == name {
			return n
		}
	}
	for n := m.at.first; n != m.next; n = n.next {
		if n.name == name {
			return n
		}
	}
	return nil
}

// take finds a member to read; nil when absent. It reports absence of what is
// required, a kind other than the one wanted, and what can't be used.
func (m *Members) take(name string, want kind, wantWord string, rules []Rule) *node {
	n := m.find(name)
	if n == nil {
		if len(rules) > 0 {
			m.report.add("missing", m.at, "/"+escapePointer(name), finding.Refuse, "name", name)
		}
		return nil
	}
	n.claimed, m.next = true, n.next
	switch {
	case n.kind == kindNull && len(rules) == 0:
		return nil
	case n.kind != want && !(want == kindTrue && n.kind == kindFalse):
		m.report.add("wrong-type", n, "", finding.Refuse, "want", wantWord)
		return nil
	case !m.report.usable(n):
		return nil
	}
	return n
}

// String is a text member. A required one is written even when it is empty, so
// that what was read can be read again.
func (m *Members) String(name string, p *string, rules ...Rule) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: TextKind, Text: ""}, rules)
		return
	}
	if !m.Reading() {
		if *p != "" || len(rules) > 0 {
			m.out.name(name)
			m.out.string(*p)
		}
		return
	}
	if n := m.take(name, kindString, "string", rules); n != nil {
		*p = n.text
	}
}

// LongString is String for a text of up to MaxLong bytes, such as the pages of a manual.
func (m *Members) LongString(name string, p *string, rules ...Rule) {
	if m.Reading() {
		if n := m.find(name); n != nil && n.kind == kindString && n.flaw == tooLong && len(n.text) <= MaxLong {
			n.flaw = 0
		}
	}
	m.String(name, p, rules...)
}

// Text is String for types that are strings, such as ids.
func Text[T ~string](m *Members, name string, p *T, rules ...Rule) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: TextKind, Text: *new(T)}, rules)
		return
	}
	s := string(*p)
	m.String(name, &s, rules...)
	*p = T(s)
}

// Bool is a true-or-false member.
func (m *Members) Bool(name string, p *bool, rules ...Rule) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: BoolKind}, rules)
		return
	}
	if !m.Reading() {
		if *p {
			m.out.name(name)
			m.out.bool(true)
		}
		return
	}
	if n := m.take(name, kindTrue, "boolean", rules); n != nil {
		*p = n.kind == kindTrue
	}
}

// Float is a number member. A required one is written even when it is 0.
func (m *Members) Float(name string, p *float64, rules ...Rule) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: NumberKind}, rules)
		return
	}
	if !m.Reading() {
		if *p != 0 || len(rules) > 0 {
			m.out.name(name)
			m.out.float(*p)
		}
		return
	}
	n := m.take(name, kindNumber, "number", rules)
	if n == nil {
		return
	}
	v, err := strconv.ParseFloat(n.text, 64)
	if err != nil {
		m.report.add("number-too-large", n, "", finding.Refuse)
		return
	}
	*p = v
}

// Offset is Int for a place in a text, which is written even where it is 0: who cuts the
// text by it would look for it in vain.
func (m *Members) Offset(name string, p *int) {
	switch {
	case describes && m.described != nil:
		m.describe(Member{Name: name, Kind: IntegerKind, Always: true}, nil)
	case m.Reading():
		m.Int(name, p)
	default:
		m.out.name(name)
		m.out.int(*p)
	}
}

// Int is a whole-number member.
func (m *Members) Int(name string, p *int, rules ...Rule) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: IntegerKind}, rules)
		return
	}
	if !m.Reading() {
		if *p != 0 {
			m.out.name(name)
			m.out.int(*p)
		}
		return
	}
	n := m.take(name, kindNumber, "number", rules)
	if n == nil {
		return
	}
	v, err := strconv.Atoi(n.text)
	if err != nil {
		m.report.add("wrong-type", n, "", finding.Refuse, "want", "whole number")
		return
	}
	*p = v
}
