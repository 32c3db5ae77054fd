package wire

import (
	"strconv"
	"strings"

	"tidysump/internal/finding"
)

// Limits of what Read takes. They are far above any real card or job and far
// below what would make a phone stop.
const (
	MaxDepth  = 32     // nested objects and arrays
	MaxValues = 200000 // values in one text
	MaxText   = 20000  // bytes of one string, number or name
)

// node is a JSON value as read, with its place.
type node struct {
	kind    kind
	text    string
	names   []string
	members []*node
	// where is built on demand: most values never need their place reported.
	parent *node
	name   string
}

func (n *node) where() string {
	if n.parent == nil {
		return ""
	}
	return n.parent.where() + "/" + escapePointer(n.name)
}

func escapePointer(name string) string {
	return strings.ReplaceAll(strings.ReplaceAll(name, "~", "~0"), "/", "~1")
}

// tree reads a JSON text into nodes, until something is wrong with it.
type tree struct {
	syntax
	values int
	bad    *finding.Finding
}

func parse(in []byte) (*node, *finding.Finding) {
	t := tree{syntax: syntax{in: in}}
	root := t.value(nil, "", 0)
	if t.bad == nil && (t.space() != 0 || t.at < len(in)) {
		t.broken(&node{})
	}
	return root, t.bad
}

// fault says what is wrong with the text and gives up; only the first counts.
func (t *tree) fault(n *node, code string, values ...string) {
	if t.bad != nil {
		return
	}
	t.bad = &finding.Finding{Code: code, Where: n.where(), Grade: finding.Refuse, Values: finding.Values(values...)}
	if t.bad.Where == "" {
		t.bad.Where = "/"
	}
}

// broken says that the text is no JSON from where it has been read to.
func (t *tree) broken(n *node) { t.fault(n, "not-json", "byte", strconv.Itoa(t.at)) }

// value reads the next value. Without one there is a finding.
func (t *tree) value(parent *node, name string, depth int) *node {
	n := &node{parent: parent, name: name}
	t.values++
	if depth > MaxDepth || t.values > MaxValues {
		t.fault(n, "too-much")
		return n
	}
	ok := true
	switch c := t.space(); c {
	case '{':
		n.kind = kindObject
		t.members(n, '}', depth)
	case '[':
		n.kind = kindArray
		t.members(n, ']', depth)
	case '"':
		n.kind = kindString
		n.text, ok = t.string()
	case 't':
		n.kind, ok = kindTrue, t.literal("true")
	case 'f':
		n.kind, ok = kindFalse, t.literal("false")
	case 'n':
		n.kind, ok = kindNull, t.literal("null")
	default:
		n.kind = kindNumber
		n.text, ok = t.number()
	}
	if !ok {
		t.broken(n)
	}
	t.bound(n, n.text)
	return n
}

// bound refuses a value's text, or a name in it, that is too long.
func (t *tree) bound(n *node, text string) {
	if len(text) > MaxText {
		t.fault(n, "text-too-long", "most", strconv.Itoa(MaxText))
	}
}

// members reads what an object or array holds, to its closing bracket.
func (t *tree) members(n *node, end byte, depth int) {
	t.at++
	var seen map[string]bool
	if n.kind == kindObject {
		seen = map[string]bool{}
	}
	for t.bad == nil {
		c := t.space()
		switch {
		case c == end && len(n.members) == 0:
			t.at++
			return
		case len(n.members) > 0 && c == ',':
			t.at++
			c = t.space()
		case len(n.members) > 0:
			t.broken(n)
			return
		}
		var name string
		if n.kind == kindObject {
			name = t.memberName(n, c, seen)
		} else {
			name = strconv.Itoa(len(n.members))
		}
		if t.bad == nil {
			n.members = append(n.members, t.value(n, name, depth+1))
		}
		if t.space() == end && t.bad == nil {
			t.at++
			return
		}
	}
}

// memberName reads the name that begins with c, and the colon after it.
func (t *tree) memberName(n *node, c byte, seen map[string]bool) string {
	from := t.at
	name, ok := "", c == '"'
	if ok {
		name, ok = t.string()
	}
	if !ok {
		t.broken(n)
		return ""
	}
	t.bound(n, name)
	if seen[name] {
		t.fault(&node{parent: n, name: name}, "name-twice", "byte", strconv.Itoa(from))
	}
	seen[name] = true
	n.names = append(n.names, name)
	if t.space() != ':' {
		t.broken(n)
	}
	t.at++
	return name
}
