package main

import (
	"fmt"
	"reflect"
	"strings"

	"tidysump/internal/core"
	"tidysump/internal/wire"
)

// collection is all that the operations read and write.
type collection struct {
	*sources
	// variants are the lists of members that a Go type was seen with: most have one,
	// a calculation's form and answer have one for each calculation.
	variants   map[reflect.Type]map[string]bool
	names      map[reflect.Type]string
	shapes     []*shape
	byName     map[string]*shape
	operations []operation
	words      map[string]string // names of the types of texts in use, by Go's
}

type operation struct{ name, in, out string }

// shape is an object as it is declared.
type shape struct {
	name, doc string
	goName    string
	members   []wire.Member
	records   map[string]string // by member: the shape of what it holds
	in, out   bool              // it is read, it is written
}

// collect goes through all operations twice: which types there are must be known
// before they get their names.
func collect(src *sources) *collection {
	c := &collection{sources: src, variants: map[reflect.Type]map[string]bool{}, byName: map[string]*shape{}, words: map[string]string{}}
	for _, o := range core.Operations() {
		c.see(o.Input())
		c.see(o.Answer())
	}
	c.names = namesOf(c.variants)
	for _, o := range core.Operations() {
		base := capital(o.Name)
		in := c.add(o.Input(), base+"Input", fmt.Sprintf("What `%s` takes.", o.Name), false)
		out := c.add(o.Answer(), base+"Answer", fmt.Sprintf("What `%s` answers.", o.Name), true)
		c.operations = append(c.operations, operation{o.Name, in, out})
	}
	return c
}

func typeOfRecord(r wire.Record) reflect.Type { return reflect.TypeOf(r).Elem() }

// see notes with which members types come.
func (c *collection) see(r wire.Record) {
	t, members := typeOfRecord(r), wire.Describe(r)
	var signature strings.Builder
	for _, d := range members {
		fmt.Fprintln(&signature, d.Name, d.Kind, d.Many)
	}
	if c.variants[t] == nil {
		c.variants[t] = map[string]bool{}
	}
	if c.variants[t][signature.String()] {
		return
	}
	c.variants[t][signature.String()] = true
	for _, d := range members {
		if d.Record != nil {
			c.see(d.Record)
		}
	}
}

// namesOf gives each type that has one list of members a name of its own: Go's, with
// its room before it where two rooms have the same.
func namesOf(variants map[reflect.Type]map[string]bool) map[reflect.Type]string {
	plain := map[string]int{}
	short := func(t reflect.Type) string {
		return capital(strings.TrimSuffix(t.Name(), "Record"))
	}
	for t, seen := range variants {
		if len(seen) == 1 {
			plain[short(t)]++
		}
	}
	names := map[reflect.Type]string{}
	for t, seen := range variants {
		switch name := short(t); {
		case len(seen) > 1:
		case plain[name] > 1:
			names[t] = capital(strings.Split(t.String(), ".")[0]) + name
		default:
			names[t] = name
		}
	}
	return names
}

// add takes a record's shape in and gives its name; place and doc are for a type
// that has more than one list of members.
func (c *collection) add(r wire.Record, place, doc string, written bool) string {
	t := typeOfRecord(r)
	name, own := c.names[t]
	if !own {
		name = place
	}
	s := c.byName[name]
	known := s != nil
	if !known {
		s = &shape{name: name, doc: doc, goName: t.String(), members: wire.Describe(r), records: map[string]string{}}
		if own {
			s.doc = ""
			if g := c.typeNamed(s.goName); g != nil {
				s.doc = strings.Replace(g.doc, t.Name()+" ", name+" ", 1)
			}
		}
		c.byName[name] = s
		c.shapes = append(c.shapes, s)
	}
	if s.in && !written || s.out && written {
		return name
	}
	s.in, s.out = s.in || !written, s.out || written
	for _, d := range s.members {
		if d.Record != nil {
			at := name + capital(d.Name)
			s.records[d.Name] = c.add(d.Record, at, fmt.Sprintf("One of `%s` of %s.", d.Name, name), written)
		}
	}
	return name
}

// capital gives a name as types are written: "bill-lines" is BillLines.
func capital(name string) string {
	var out strings.Builder
	for _, part := range strings.Split(name, "-") {
		out.WriteString(strings.ToUpper(part[:1]) + part[1:])
	}
	return out.String()
}
