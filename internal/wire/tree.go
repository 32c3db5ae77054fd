package wire

import (
	"bytes"
	"io"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json/jsontext"

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
	kind    jsontext.Kind
	text    string
	names   []string
	members []*node
	// where is built on demand: most values never need their place told.
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

type treeReader struct {
	dec    *jsontext.Decoder
	values int
}

// fault carries a finding through the recursive descent as an error.
type fault finding.Finding

func (f fault) Error() string { return f.Code }

func parse(in []byte) (*node, *finding.Finding) {
	r := treeReader{dec: jsontext.NewDecoder(bytes.NewReader(in))}
	root, err := r.value(nil, "", 0)
	if err == nil {
		if _, end := r.dec.ReadToken(); end != io.EOF {
			err = &jsontext.SyntacticError{ByteOffset: r.dec.InputOffset()}
		}
	}
	if err == nil {
		return root, nil
	}
	// What is returned here is not wrapped; errors.As would cost the core 9 kB.
	if f, ok := err.(fault); ok {
		found := finding.Finding(f)
		if found.Where == "" {
			found.Where = "/"
		}
		return nil, &found
	}
	return nil, syntaxFinding(err, len(in))
}

func syntaxFinding(err error, length int) *finding.Finding {
	f := &finding.Finding{Code: "not-json", Grade: finding.Refuse, Where: "/"}
	at := int64(length)
	if s, ok := err.(*jsontext.SyntacticError); ok {
		at = s.ByteOffset
		if s.JSONPointer != "" {
			f.Where = string(s.JSONPointer)
		}
		if s.Err == jsontext.ErrDuplicateName {
			f.Code = "name-twice"
		}
	}
	f.Values = finding.Values("byte", strconv.FormatInt(at, 10))
	return f
}

func (r *treeReader) value(parent *node, name string, depth int) (*node, error) {
	tok, err := r.dec.ReadToken()
	if err != nil {
		return nil, err
	}
	n := &node{kind: tok.Kind(), parent: parent, name: name}
	r.values++
	if depth > MaxDepth || r.values > MaxValues {
		return nil, fault{Code: "too-much", Grade: finding.Refuse, Where: n.where()}
	}
	switch n.kind {
	case jsontext.KindBeginObject:
		return n, r.object(n, depth)
	case jsontext.KindBeginArray:
		return n, r.array(n, depth)
	}
	n.text = tok.String()
	return n, n.holds(n.text)
}

// holds checks the length of a value's text, or of a name in it.
func (n *node) holds(text string) error {
	if len(text) <= MaxText {
		return nil
	}
	return fault{Code: "text-too-long", Grade: finding.Refuse, Where: n.where(),
		Values: finding.Values("most", strconv.Itoa(MaxText))}
}

func (r *treeReader) object(n *node, depth int) error {
	for r.dec.PeekKind() != jsontext.KindEndObject {
		tok, err := r.dec.ReadToken()
		if err != nil {
			return err
		}
		name := tok.String()
		if err := n.holds(name); err != nil {
			return err
		}
		child, err := r.value(n, name, depth+1)
		if err != nil {
			return err
		}
		n.names = append(n.names, name)
		n.members = append(n.members, child)
	}
	_, err := r.dec.ReadToken()
	return err
}

func (r *treeReader) array(n *node, depth int) error {
	for r.dec.PeekKind() != jsontext.KindEndArray {
		child, err := r.value(n, strconv.Itoa(len(n.members)), depth+1)
		if err != nil {
			return err
		}
		n.members = append(n.members, child)
	}
	_, err := r.dec.ReadToken()
	return err
}
