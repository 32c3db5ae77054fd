package wire

import "runtime"

// describes is false in the core on a phone, which asks for no descriptions: the
// compiler then leaves them out of it.
const describes = runtime.GOARCH != "wasm"

// Member describes a member of a record.
type Member struct {
	Name     string
	Kind     Kind
	Many     bool // an array of such values
	Required bool // reading: its absence is a finding
	// Always: it is written even when it is empty. What is not is absent then.
	Always bool
	// Text is the zero value of a text's type, such as card.Purpose(""): what it may
	// say is that type's affair.
	Text any
	// Record is one whose members are those of an object.
	Record Record
}

// Kind is what kind of value a member has.
type Kind string

// The kinds.
const (
	TextKind    Kind = "text"
	NumberKind  Kind = "number"
	IntegerKind Kind = "integer"
	BoolKind    Kind = "bool"
	TextMapKind Kind = "text map" // an object of texts, by names of any kind
	ObjectKind  Kind = "object"
	OtherKind   Kind = "other" // an object that another operation reads or answers
)

// Describe lists the members that a record names, in their order, without reading
// or writing it. In a program for WebAssembly it lists none.
func Describe(r Record) []Member {
	m := &Members{described: &[]Member{}}
	if describes {
		r.Members(m)
	}
	return *m.described
}

// Describing reports whether the members are neither read nor written but listed.
// Members that are written under a condition are to be named then too.
func (m *Members) Describing() bool { return describes && m.described != nil }

// describe lists a member.
func (m *Members) describe(d Member, rules []Rule) {
	d.Required = len(rules) > 0
	d.Always = d.Always || d.Required && d.Kind == TextKind && !d.Many
	*m.described = append(*m.described, d)
}

// element gives one of a list's elements, a new one where it is empty.
func element[T any, P pointerTo[T]](list []T) Record {
	if len(list) > 0 {
		return P(&list[0])
	}
	return P(new(T))
}
