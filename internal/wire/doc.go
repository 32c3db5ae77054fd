// Package wire reads and writes the program's JSON without reflection, so that
// the WebAssembly core stays small (DEVELOPERS.md has the measured cost of the
// alternatives).
//
// A type names its members once, in a method Members; the same list serves for
// reading, for writing and for finding members that are missing, unknown or of
// the wrong type. Reading never stops at the first fault: it returns every
// finding, each with the JSON pointer of its place.
//
//	type Plug struct{ ID string; Magnet bool }
//
//	func (p *Plug) Members(m *wire.Members) {
//		m.String("id", &p.ID, wire.Required)
//		m.Bool("magnet", &p.Magnet)
//	}
//
// Writing leaves out what is empty; an absent member reads as the zero value.
// Describe lists a record's members for programs that write down what the JSON
// looks like.
package wire
