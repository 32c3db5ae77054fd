package main

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"tidysump/internal/wire"
)

const width = 100 // of a line, as the page's files have it

const head = `// Written by internal/declare out of what the Go types say: make types.
//
// An answer leaves out what is empty, zero or false; an input may leave out, or set
// to null, whatever is marked so. Texts that are word ids are strings here.

/** How the core answers: with what was asked for, or with what refuses it. */
export type Answer<Out> =
  { ok: Out; findings?: undefined } | { ok?: undefined; findings: Finding[] };
`

// print writes the declarations: units, words, operations, and the objects in the
// order in which the operations come to them.
func (c *collection) print() ([]byte, error) {
	var objects bytes.Buffer
	var missing []string
	used := map[string]bool{}
	for _, s := range c.shapes {
		c.printShape(&objects, s, used, &missing)
	}
	for key := range units {
		if !used[key] {
			missing = append(missing, key+" has a unit and is nowhere: take it out")
		}
	}
	if missing != nil {
		slices.Sort(missing)
		return nil, errors.New("units in internal/declare/units.go:\n" + strings.Join(missing, "\n"))
	}
	var out bytes.Buffer
	out.WriteString(head)
	c.printOperations(&out)
	for _, u := range unitTypes {
		if used[u.name] {
			fmt.Fprintf(&out, "\n/** %s */\nexport type %s = number;\n", u.doc, u.name)
		}
	}
	if err := c.printWords(&out); err != nil {
		return nil, err
	}
	out.Write(objects.Bytes())
	return out.Bytes(), nil
}

func (c *collection) printOperations(out *bytes.Buffer) {
	out.WriteString("\n/** The operations by their names. */\nexport interface Ops {\n")
	for _, o := range c.operations {
		name := o.name
		if strings.Contains(name, "-") {
			name = "'" + name + "'"
		}
		fmt.Fprintf(out, "  %s: { in: %s; out: %s };\n", name, o.in, o.out)
	}
	out.WriteString("}\n")
}

// printWords writes the types of texts, each as all that it may say.
func (c *collection) printWords(out *bytes.Buffer) error {
	var list []string
	for goName := range c.words {
		list = append(list, goName)
	}
	slices.SortFunc(list, func(a, b string) int { return strings.Compare(c.words[a], c.words[b]) })
	for n := range list[1:] {
		if name := c.words[list[n]]; name == c.words[list[n+1]] {
			return fmt.Errorf("%s and %s are both declared as %s", list[n], list[n+1], name)
		}
	}
	for _, goName := range list {
		words := c.sources.words[goName]
		if len(words) == 0 {
			return fmt.Errorf("what a %s may say stands nowhere as constants", goName)
		}
		name := c.words[goName]
		fmt.Fprintln(out)
		if t := c.types[goName]; t != nil {
			comment(out, "", strings.Replace(t.doc, goName[strings.IndexByte(goName, '.')+1:]+" ", name+" ", 1))
		}
		switch line := "'" + strings.Join(words, "' | '") + "';"; {
		case len("export type  = "+name+line) <= width:
			fmt.Fprintf(out, "export type %s = %s\n", name, line)
		case len("  "+line) <= width:
			fmt.Fprintf(out, "export type %s =\n  %s\n", name, line)
		default:
			fmt.Fprintf(out, "export type %s =\n  | '%s';\n", name, strings.Join(words, "'\n  | '"))
		}
	}
	return nil
}

func (c *collection) printShape(out *bytes.Buffer, s *shape, used map[string]bool, missing *[]string) {
	fmt.Fprintln(out)
	comment(out, "", s.doc)
	if len(s.members) == 0 {
		fmt.Fprintf(out, "export interface %s {}\n", s.name)
		return
	}
	fmt.Fprintf(out, "export interface %s {\n", s.name)
	for _, d := range s.members {
		comment(out, "  ", c.docOf(s.goName, d.Name))
		kind := c.typeOf(s, d, used, missing)
		if d.Many {
			kind += "[]"
		}
		mark := ""
		if s.in && !d.Required || s.out && !d.Always {
			mark = "?"
			if s.in && !s.out {
				kind += " | null"
			}
		}
		fmt.Fprintf(out, "  %s%s: %s;\n", d.Name, mark, kind)
	}
	fmt.Fprintln(out, "}")
}

// typeOf gives the type of one value of a member.
func (c *collection) typeOf(s *shape, d wire.Member, used map[string]bool, missing *[]string) string {
	switch d.Kind {
	case wire.BoolKind:
		return "boolean"
	case wire.TextMapKind:
		return "{ [name: string]: string }"
	case wire.OtherKind:
		return "{ [name: string]: any }"
	case wire.ObjectKind:
		return s.records[d.Name]
	case wire.NumberKind, wire.IntegerKind:
		key := s.name + "." + d.Name
		unit := units[key]
		if used[key], used[unit] = true, true; !slices.ContainsFunc(unitTypes, func(u unitType) bool { return u.name == unit }) {
			*missing = append(*missing, fmt.Sprintf("%s, %s, has none that is known: %q", key, d.Kind, unit))
		}
		return unit
	}
	t := reflect.TypeOf(d.Text)
	if t.Name() == "string" {
		return "string"
	}
	c.words[t.String()] = t.Name()
	if _, taken := c.byName[t.Name()]; taken {
		c.words[t.String()] = t.Name() + "Word"
	}
	return c.words[t.String()]
}

// comment writes the first paragraph of a comment.
func comment(out *bytes.Buffer, indent, text string) {
	text, _, _ = strings.Cut(text, "\n\n")
	words := strings.Fields(strings.ReplaceAll(text, "*/", "* /"))
	if len(words) == 0 {
		return
	}
	if line := indent + "/** " + strings.Join(words, " ") + " */"; len([]rune(line)) <= width {
		fmt.Fprintln(out, line)
		return
	}
	fmt.Fprintf(out, "%s/**\n", indent)
	line := indent + " *"
	for _, w := range words {
		if len([]rune(line))+1+len([]rune(w)) > width {
			fmt.Fprintln(out, line)
			line = indent + " *"
		}
		line += " " + w
	}
	fmt.Fprintf(out, "%s\n%s */\n", line, indent)
}
