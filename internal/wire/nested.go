package wire

import (
	"slices"
	"strings"

	"tidysump/internal/finding"
)

// pointerTo is satisfied by *T when *T is a Record.
type pointerTo[T any] interface {
	*T
	Record
}

// Object is a member that is itself a record.
func (m *Members) Object(name string, r Record, rules ...Rule) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: ObjectKind, Always: true, Record: r}, rules)
		return
	}
	if !m.Reading() {
		m.out.name(name)
		m.writeObject(r)
		return
	}
	if n := m.take(name, kindObject, "object", rules); n != nil {
		readObject(n, r, m.report, m.unknown)
	}
}

// Other is a member that is written where there is one: an object that is described
// elsewhere, as what another operation reads or answers.
func (m *Members) Other(name string, r Record, there bool) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: OtherKind}, nil)
		return
	}
	if there && !m.Reading() {
		m.Object(name, r)
	}
}

// Optional is a record member that may be absent: the pointer is then nil.
func Optional[T any, P pointerTo[T]](m *Members, name string, p **T) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: ObjectKind, Record: P(new(T))}, nil)
		return
	}
	var r Record
	if *p != nil {
		r = P(*p)
	}
	m.optional(name, r, func() Record {
		*p = new(T)
		return P(*p)
	})
}

// optional is Optional for all types, so that it is in the program once.
func (m *Members) optional(name string, r Record, made func() Record) {
	if !m.Reading() {
		if r != nil {
			m.Object(name, r)
		}
		return
	}
	if n := m.take(name, kindObject, "object", nil); n != nil {
		m.readApart(n, made())
	}
}

// List is a member that is an array of records.
func List[T any, P pointerTo[T]](m *Members, name string, list *[]T, rules ...Rule) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: ObjectKind, Many: true, Record: element[T, P](*list)}, rules)
		return
	}
	m.list(name, len(*list), rules,
		func(count int) { *list = make([]T, count) },
		func(i int) Record { return P(&(*list)[i]) })
}

// list is List for all types, so that it is in the program once: a list of that many
// records, how one of so many is made, and each of them.
func (m *Members) list(name string, count int, rules []Rule, make func(count int), record func(i int) Record) {
	if !m.Reading() {
		if count > 0 {
			m.out.name(name)
			m.out.open('[')
			for i := range count {
				m.writeObject(record(i))
			}
			m.out.close(']')
		}
		return
	}
	n := m.take(name, kindArray, "array", rules)
	if n == nil {
		return
	}
	make(int(n.count))
	for child := n.first; child != nil; child = child.next {
		m.readApart(child, record(int(child.at)))
	}
}

// Apart is a record that spoils nothing but itself: what refuses it in a list, or
// where it may be absent, is handed to it, with places below it, and not reported.
type Apart interface {
	Record
	Unread(found []finding.Finding)
}

func (m *Members) readApart(n *node, r Record) {
	before := len(m.report.findings)
	m.report.element(n, r, m.unknown)
	apart, ok := r.(Apart)
	if !ok || !finding.Refused(m.report.findings[before:]) {
		return
	}
	found := slices.Clone(m.report.findings[before:])
	for i := range found {
		found[i].Where = strings.TrimPrefix(found[i].Where, n.where())
	}
	apart.Unread(found)
	m.report.findings = m.report.findings[:before]
}

// Rows is a member that is an array of records made by the reader, which learns
// how many there are and may make fewer. It is for reading alone.
func (m *Members) Rows(name string, records func(n int) []Record) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: ObjectKind, Many: true, Record: records(1)[0]}, nil)
		return
	}
	n := m.take(name, kindArray, "array", nil)
	if n == nil {
		return
	}
	child := n.first
	for _, r := range records(int(n.count)) {
		m.report.element(child, r, m.unknown)
		child = child.next
	}
}

// Texts is a member that is an array of strings.
func Texts[T ~string](m *Members, name string, list *[]T, rules ...Rule) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: TextKind, Many: true, Text: *new(T)}, rules)
		return
	}
	if !m.Reading() {
		if len(*list) > 0 {
			m.out.name(name)
			m.out.open('[')
			for _, s := range *list {
				m.out.string(string(s))
			}
			m.out.close(']')
		}
		return
	}
	n := m.take(name, kindArray, "array", rules)
	if n == nil {
		return
	}
	for child := n.first; child != nil; child = child.next {
		if m.report.isText(child) {
			*list = append(*list, T(child.text))
		}
	}
}

// TextMap is a member that is an object of strings, written in the order of
// its names.
func (m *Members) TextMap(name string, p *map[string]string) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: TextMapKind}, nil)
		return
	}
	if !m.Reading() {
		if len(*p) > 0 {
			m.out.name(name)
			m.writeTextMap(*p)
		}
		return
	}
	n := m.take(name, kindObject, "object", nil)
	if n == nil {
		return
	}
	*p = make(map[string]string, n.count)
	for child := n.first; child != nil; child = child.next {
		if m.report.isText(child) {
			(*p)[child.name] = child.text
		}
	}
}

func (m *Members) writeTextMap(p map[string]string) {
	names := make([]string, 0, len(p))
	for n := range p {
		names = append(names, n)
	}
	slices.Sort(names)
	m.out.open('{')
	for _, n := range names {
		m.out.name(n)
		m.out.string(p[n])
	}
	m.out.close('}')
}

func (m *Members) writeObject(r Record) {
	m.out.open('{')
	r.Members(&Members{out: m.out})
	m.out.close('}')
}

// Write gives the record's JSON text: members in the record's order, empty
// ones left out, no white space. The same record gives the same bytes.
func Write(r Record) []byte {
	m := &Members{out: &writer{}}
	m.writeObject(r)
	return m.out.text
}
