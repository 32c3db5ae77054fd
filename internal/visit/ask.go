package visit

import (
	"tidysump/internal/ledger"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Letters that are offered to be typed.
const (
	LongLetters  = 1500 // what is said in sentences
	ShortLetters = 120  // a name, an amount, a place
)

// MostPoints is the most bytes that the points of a signature take: a name of 20 s at 60
// points a second, thinned by the page.
const MostPoints = 16000

// The kinds of facts of a visit, besides undo.
const (
	Told     ledger.FactKind = "said"    // at arrival: What is one of Asks
	Seen     ledger.FactKind = "found"   // by the look round: What is a word of the question "found"
	Met      ledger.FactKind = "trouble" // during the work: Text what, Value its price
	Answered ledger.FactKind = "answer"  // What is the trouble, Value what the customer said
	Signed   ledger.FactKind = "signed"  // What is AtArrival or AtHandover, Value the points, Text what was agreed
	Handed   ledger.FactKind = "handed"  // the bike was handed over
)

// What is told at arrival.
const (
	Wish     = "wish"     // what the customer says and wants
	Work     = "agreed"   // the work that was agreed
	Keys     = "keys"     // which were handed in
	Fuel     = "fuel"     // how much is in the tank
	Odometer = "odometer" // what it shows at arrival
	Most     = "most"     // the most that it may cost
	Promised = "promised" // when it is to be ready
)

// Kinds of what is asked, besides quantities.
const (
	aText   = "text"
	aChoice = "choice"
	aMoney  = "money"  // an amount as typed, its currency in the sign "currency"
	aMoment = "moment" // "2026-11-30T17:00", on the phone's own clock
)

// Question is one thing that is asked in a visit; the page draws its forms from them.
type Question struct {
	Name    string
	Kind    string // text, choice, money, moment, or a kind of quantity
	Letters int    // that are offered to be typed; 0 where nothing is typed
	Lines   bool   // several lines may be typed
	Words   []string
	Family  string // a word's word id is family + word
}

// Members names the members of a question.
func (a *Question) Members(m *wire.Members) {
	m.String("name", &a.Name, wire.Required)
	m.String("kind", &a.Kind, wire.Required)
	m.Int("letters", &a.Letters)
	m.Bool("lines", &a.Lines)
	wire.Texts(m, "words", &a.Words)
	m.String("family", &a.Family)
}

// Asks is what is asked at arrival, in the order of asking.
var Asks = [...]Question{
	{Name: Wish, Kind: aText, Letters: LongLetters, Lines: true},
	{Name: Odometer, Kind: string(quantity.Distance), Letters: ShortLetters},
	{Name: Fuel, Kind: aChoice, Words: []string{"empty", "quarter", "half", "three-quarters", "full"}, Family: "visit.fuel."},
	{Name: Keys, Kind: aText, Letters: ShortLetters},
	{Name: Work, Kind: aText, Letters: LongLetters, Lines: true},
	{Name: Most, Kind: aMoney, Letters: ShortLetters},
	{Name: Promised, Kind: aMoment},
}

// Others is what else is asked: what a look round finds, and what the customer answers.
var Others = [...]Question{
	{Name: "found", Kind: aChoice, Words: []string{"damaged", "missing", "leaking", "worn", "other"}, Family: "visit.found."},
	{Name: "answer", Kind: aChoice, Words: []string{Yes, No, NotReached}, Family: "visit.answer."},
	{Name: "way", Kind: aChoice, Words: []string{"here", "phone", "message"}, Family: "visit.how."},
	{Name: "text", Kind: aText, Letters: LongLetters, Lines: true},
	{Name: "line", Kind: aText, Letters: ShortLetters},
	{Name: "price", Kind: aMoney, Letters: ShortLetters},
	{Name: "when", Kind: aMoment},
	{Name: "points", Kind: aText, Letters: MostPoints},
}

// askOf gives the question of that name, nil where there is none.
func askOf(list []Question, name string) *Question {
	for n := range list {
		if list[n].Name == name {
			return &list[n]
		}
	}
	return nil
}
