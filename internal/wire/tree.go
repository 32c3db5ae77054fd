package wire

import (
	"strconv"
	"strings"

	"tidysump/internal/finding"
)

// Limits of what Read takes. They are far above any real card or job and far
// below what would make a phone stop. What is too deep or too long is passed over,
// and refused only where a record names it: it spoils that record alone.
const (
	MaxDepth  = 32     // nested objects and arrays
	MaxValues = 600000 // values in one text, without those that are too deep
	MaxText   = 20000  // bytes of one string, number or name
	MaxLong   = 200000 // bytes of one string where a long one may stand
)

// node is a JSON value as read, with its place.
type node struct {
	kind    kind
	flaw    flaw
	claimed bool  // a record has named it
	count   int32 // of members
	at      int32 // in an array
	text    string
	name    string // in an object
	first   *node  // of its members, and the one after it among its parent's
	next    *node
	parent  *node
}

// flaw is why a value can't be used that stands in a text that can be read.
type flaw byte

const (
	tooLong   flaw = 1 + iota // or a name in it is
	tooDeep                   // its members are not read
	nameTwice                 // text is the name
)

// where is the value's place. It is made when it is asked for: most are never told.
func (n *node) where() string {
	switch {
	case n.parent == nil:
		return ""
	case n.parent.kind == kindArray:
		return n.parent.where() + "/" + strconv.Itoa(int(n.at))
	}
	return n.parent.where() + "/" + escapePointer(n.name)
}

// escapePointer makes a name a part of a place (RFC 6901). One that is too long is
// cut there.
func escapePointer(name string) string {
	const most = 200
	if len(name) > most {
		name = finding.Clip(name)
	}
	return strings.ReplaceAll(strings.ReplaceAll(name, "~", "~0"), "/", "~1")
}

// tree reads a JSON text into nodes, until it is none.
type tree struct {
	syntax
	values int
	spare  []node // nodes made together
	bad    []finding.Finding
}

// parse gives a text's value, or what is wrong with it as a whole.
func parse(in []byte) (*node, []finding.Finding) {
	t := tree{syntax: syntax{in: string(in)}}
	root := t.value(nil, 0)
	if t.bad == nil && (t.space() != 0 || t.at < len(t.in)) {
		t.broken()
	}
	return root, t.bad
}

// broken says that the text is no JSON from where it has been read to, and gives up;
// only the first such place counts.
func (t *tree) broken() {
	if t.bad == nil {
		t.bad = brokenAt(t.in, t.at)
	}
}

func (t *tree) node(parent *node) *node {
	const together = 128
	if len(t.spare) == 0 {
		t.spare = make([]node, together)
	}
	n := &t.spare[0]
	t.spare = t.spare[1:]
	n.parent = parent
	return n
}

// value reads the next value. Without one there is a finding.
func (t *tree) value(parent *node, depth int) *node {
	n := t.node(parent)
	if t.values++; t.values > MaxValues {
		if t.bad == nil {
			t.bad = finding.Refusal("too-much", "/", "most", strconv.Itoa(MaxValues))
		}
		return n
	}
	ok := true
	switch c := t.space(); c {
	case '{', '[':
		n.kind = kindObject
		if c == '[' {
			n.kind = kindArray
		}
		if depth > MaxDepth {
			n.flaw = tooDeep
			ok = t.skip()
		} else {
			t.members(n, c+2, depth)
		}
	default:
		n.kind, n.text, ok = t.scalar(c)
	}
	if !ok {
		t.broken()
	}
	if len(n.text) > MaxText {
		n.flaw = tooLong
	}
	return n
}

// members reads what an object or array holds, to its closing bracket.
func (t *tree) members(n *node, end byte, depth int) {
	t.at++
	if t.space() == end {
		t.at++
		return
	}
	names := names{of: n}
	last := &n.first
	for t.bad == nil {
		name := ""
		if n.kind == kindObject {
			name = t.memberName(&names)
		}
		if t.bad != nil {
			return
		}
		child := t.value(n, depth+1)
		child.name, child.at = name, n.count
		*last, last = child, &child.next
		n.count++
		c := t.space()
		switch {
		case t.bad != nil:
			return
		case c == end:
			t.at++
			return
		case c != ',':
			t.broken()
		}
		t.at++
	}
}

// memberName reads a name and the colon after it.
func (t *tree) memberName(seen *names) string {
	name, ok := "", t.space() == '"'
	if ok {
		name, ok = t.string()
	}
	if !ok || t.space() != ':' {
		t.broken()
		return ""
	}
	t.at++
	if n := seen.of; len(name) > MaxText {
		n.flaw = tooLong
	} else if seen.add(name) {
		n.flaw, n.text = nameTwice, name
	}
	return name
}

// names are those of an object so far. Most objects have so few that looking through
// them is quicker than a map.
type names struct {
	of  *node
	all map[string]bool
}

// add notes a name, and reports whether it stood there before.
func (s *names) add(name string) bool {
	const few = 24
	if s.of.count < few {
		for n := s.of.first; n != nil; n = n.next {
			if n.name == name {
				return true
			}
		}
		return false
	}
	if s.all == nil {
		s.all = map[string]bool{}
		for n := s.of.first; n != nil; n = n.next {
			s.all[n.name] = true
		}
	}
	twice := s.all[name]
	s.all[name] = true
	return twice
}
