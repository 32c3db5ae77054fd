package calc

import (
	"slices"

	"tidysump/internal/quantity"
)

// Asked is a field of a calculation as a reader of what a person says sees it. Low and
// High are in the base unit of its kind.
type Asked struct {
	Name          string
	Kind          quantity.Kind
	Needed, Front bool
	Low, High     float64
	Ranged        bool
	Words         []string
	Family        string
	Rows          []Asked
	On            string
	When          []string
	Says          Said
	Then, Beside  string
	By            string // the field of what stands behind a times sign
	Many          bool   // several may stand there, parted by commas
}

// AtBench lists the calculations that answer a question at the bench, in the order in
// which the page lists them.
func AtBench() []Calculation { return atBench[:] }

// Asks lists what a calculation asks for.
func (c *Calculation) Asks() []Asked { return askedOf(c.fields) }

func askedOf(fields []field) []Asked {
	list := make([]Asked, len(fields))
	for n := range fields {
		d := &fields[n]
		list[n] = Asked{d.name, d.kind, d.needed, d.front, d.low, d.high, d.ranged, d.words, d.family,
			askedOf(d.rows), d.on, d.when, d.says, d.then, d.beside, d.by, d.many}
	}
	return list
}

// Fill puts a text into a field as if it had been typed; into a field of yes or no any
// text says yes. Row counts the rows of the list that the field stands in; a field of
// none has "" for its list.
func (f *Form) Fill(list string, row int, name, text string) {
	if list != "" {
		g := f.of(list)
		for len(g.rows) <= row {
			g.rows = append(g.rows, f.emptyRow(list, len(g.rows)))
		}
		g.rows[row].Fill("", 0, name, text)
		return
	}
	f.of(name).take(f.fieldOf(name), text)
}

func (f *Form) emptyRow(list string, n int) Form {
	row := f.newRow(f.fieldOf(list), n)
	row.given = make([]given, len(row.fields))
	return row
}

// Blank gives an empty form to be filled in, by a person of that system of units.
func (c *Calculation) Blank(system quantity.System) *Form {
	f := c.Input()
	f.system, f.given = system, make([]given, len(f.fields))
	return f
}

// Shelf gives an empty form of the lists of things that a person has, which stay from one
// time to the next: bottles and wrenches. Things have names.
func Shelf() *Form {
	var lists []field
	for n := range atBench {
		for _, d := range atBench[n].fields {
			if slices.ContainsFunc(d.rows, func(row field) bool { return row.name == "id" }) {
				lists = append(lists, d)
			}
		}
	}
	return newForm(lists)
}

// Has reports whether a form has rows in a list.
func (f *Form) Has(list string) bool {
	n := f.find(list)
	return n >= 0 && n < len(f.given) && len(f.given[n].rows) > 0
}

// Take takes over a list of another form, with all its rows.
func (f *Form) Take(from *Form, list string) {
	g := f.of(list)
	for _, row := range from.of(list).rows {
		made := f.emptyRow(list, len(g.rows))
		made.given = row.given
		g.rows = append(g.rows, made)
	}
}
