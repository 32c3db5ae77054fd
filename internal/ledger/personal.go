package ledger

import "tidysump/internal/wire"

// Person says which facts tell of a person: those of a kind in a book, and where What
// isn't empty of them those that are about it.
type Person struct {
	Book Book
	Kind FactKind
	What string
}

// Members names the members.
func (p *Person) Members(m *wire.Members) {
	wire.Text(m, "book", &p.Book, wire.Required)
	wire.Text(m, "kind", &p.Kind, wire.Required)
	m.String("what", &p.What)
}

// Persons lists what tells of a person: who it is, how to reach them, what leads to them
// (a number plate or frame number names one person to an office), what they said in
// their own words and wrote with their own hand, and pictures of a bike, which may show
// its plate.
var Persons = []Person{
	{BikeBook, "told", "owner"},
	{BikeBook, "told", "reach"},
	{BikeBook, "told", "plate"},
	{BikeBook, "told", "frame"},
	{BikeBook, "photo", ""},
	{VisitBook, "said", "wish"},
	{VisitBook, "said", "agreed"},
	{VisitBook, "said", "keys"},
	{VisitBook, "signed", ""},
}

// Personal reports whether a fact tells of a person. One act erases all of those for
// good, and no file that was said to be without persons holds any.
func Personal(f *Fact) bool {
	for i := range Persons {
		if p := &Persons[i]; p.Book == f.Book && p.Kind == f.Kind && (p.What == "" || p.What == f.What) {
			return true
		}
	}
	return false
}
