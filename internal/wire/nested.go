package wire

import (
	"bytes"
	"slices"

	"github.com/go-json-experiment/json/jsontext"

	"tidysump/internal/finding"
)

// pointerTo is satisfied by *T when *T is a Record.
type pointerTo[T any] interface {
	*T
	Record
}

// Object is a member that is itself a record.
func (m *Members) Object(name string, r Record, rules ...Rule) {
	if !m.Reading() {
		m.write(jsontext.String(name))
		m.writeObject(r)
		return
	}
	if n := m.take(name, jsontext.KindBeginObject, "object", rules); n != nil {
		readObject(n, r, m.report, m.unknown)
	}
}

// Optional is a record member that may be absent: the pointer is then nil.
func Optional[T any, P pointerTo[T]](m *Members, name string, p **T) {
	if !m.Reading() {
		if *p != nil {
			m.Object(name, P(*p))
		}
		return
	}
	if n := m.take(name, jsontext.KindBeginObject, "object", nil); n != nil {
		*p = new(T)
		readObject(n, P(*p), m.report, m.unknown)
	}
}

// List is a member that is an array of records.
func List[T any, P pointerTo[T]](m *Members, name string, list *[]T, rules ...Rule) {
	if !m.Reading() {
		if len(*list) > 0 {
			m.write(jsontext.String(name))
			m.write(jsontext.BeginArray)
			for i := range *list {
				m.writeObject(P(&(*list)[i]))
			}
			m.write(jsontext.EndArray)
		}
		return
	}
	n := m.take(name, jsontext.KindBeginArray, "array", rules)
	if n == nil {
		return
	}
	*list = make([]T, len(n.members))
	for i, child := range n.members {
		readObject(child, P(&(*list)[i]), m.report, m.unknown)
	}
}

// Texts is a member that is an array of strings.
func Texts[T ~string](m *Members, name string, list *[]T, rules ...Rule) {
	if !m.Reading() {
		if len(*list) > 0 {
			m.write(jsontext.String(name))
			m.write(jsontext.BeginArray)
			for _, s := range *list {
				m.write(jsontext.String(string(s)))
			}
			m.write(jsontext.EndArray)
		}
		return
	}
	n := m.take(name, jsontext.KindBeginArray, "array", rules)
	if n == nil {
		return
	}
	for _, child := range n.members {
		if child.kind != jsontext.KindString {
			m.report.add("wrong-type", child.where(), finding.Refuse, "want", "string")
			continue
		}
		*list = append(*list, T(child.text))
	}
}

// TextMap is a member that is an object of strings, written in the order of
// its names.
func (m *Members) TextMap(name string, p *map[string]string) {
	if !m.Reading() {
		if len(*p) > 0 {
			m.write(jsontext.String(name))
			m.writeTextMap(*p)
		}
		return
	}
	n := m.take(name, jsontext.KindBeginObject, "object", nil)
	if n == nil {
		return
	}
	*p = make(map[string]string, len(n.members))
	for i, child := range n.members {
		if child.kind != jsontext.KindString {
			m.report.add("wrong-type", child.where(), finding.Refuse, "want", "string")
			continue
		}
		(*p)[n.names[i]] = child.text
	}
}

func (m *Members) writeTextMap(p map[string]string) {
	names := make([]string, 0, len(p))
	for n := range p {
		names = append(names, n)
	}
	slices.Sort(names)
	m.write(jsontext.BeginObject)
	for _, n := range names {
		m.put(n, jsontext.String(p[n]))
	}
	m.write(jsontext.EndObject)
}

func (m *Members) writeObject(r Record) {
	m.write(jsontext.BeginObject)
	r.Members(&Members{out: m.out})
	m.write(jsontext.EndObject)
}

// Write gives the record's JSON text: members in the record's order, empty
// ones left out, no white space. The same record gives the same bytes.
func Write(r Record) []byte {
	var b bytes.Buffer
	m := &Members{out: jsontext.NewEncoder(&b)}
	m.writeObject(r)
	return bytes.TrimRight(b.Bytes(), "\n")
}
