// Package garage says which bikes there are from what was told of them:
//
//	Replay(facts) -> bikes    pure
//
// A bike is one machine. It follows a card, may have figures of its own that lie over
// the card's, and may have been entered twice: then one goes into the other, and all
// that the two have is of one bike.
package garage

import (
	"slices"

	"tidysump/internal/card"
	"tidysump/internal/due"
	"tidysump/internal/ledger"
	"tidysump/internal/wire"
)

// The kinds of facts of a bike.
const (
	Follows ledger.FactKind = "follows"  // Value is the id of its card
	Told    ledger.FactKind = "told"     // What is one of Tellings, Value what it is; empty takes it away
	Own     ledger.FactKind = "figure"   // What is that of a card.Own, Value as typed; empty takes it away
	Aside   ledger.FactKind = "aside"    // laid aside: What is one of Reasons
	Back    ledger.FactKind = "back"     // taken up again
	Joined  ledger.FactKind = "joined"   // Value is the bike that it goes into
	Job     ledger.FactKind = "job"      // What is the id of a job that belongs to it
	Read    ledger.FactKind = "odometer" // Value is what it showed, as typed
	Picture ledger.FactKind = "photo"    // What it shows; the picture lies under the fact's id
)

// Telling is what is told of a bike.
type Telling string

// The tellings.
const (
	Called Telling = "called" // what it is called
	Plate  Telling = "plate"  // number plate
	Frame  Telling = "frame"  // frame number
	Words  Telling = "words"  // colour or other words that tell it from its twin
	Owner  Telling = "owner"  // whose it is
	Reach  Telling = "reach"  // how to reach them
)

// OfMachine and OfOwner list them, those of the owner for whoever works for others.
var (
	OfMachine = []Telling{Called, Plate, Frame, Words}
	OfOwner   = []Telling{Owner, Reach}
)

// Tellings lists all of them.
var Tellings = slices.Concat(OfMachine, OfOwner)

// Reason is why a bike was laid aside.
type Reason string

// The reasons.
const (
	Sold  Reason = "sold"
	Gone  Reason = "gone"
	Other Reason = "other"
)

// Reasons lists them.
var Reasons = []Reason{Sold, Gone, Other}

// The names of the signs of an own figure: how far it can be trusted, and the units of
// the person who typed it.
const (
	standingSign = "standing"
	systemSign   = "system"
)

// Bike is what is true of a machine, before anything is looked up in its card.
type Bike struct {
	ID      string
	Card    string // id of the card that it follows: its own where it was told of none
	Called  string
	Plate   string
	Frame   string
	Words   string
	Owner   string
	Reach   string
	Aside   Reason // empty while it is not laid aside
	Into    string // id of the bike that it went into, through all joins; empty where it is one by itself
	Jobs    []string
	Figures []card.Own
	// Odometer is what it showed between the jobs, the newest last: of a day what was
	// told last, since a slip is put right by telling again.
	Odometer []due.OdometerReading
	Photos   []Photo

	figureAt map[string]int // places in Figures

}

// Members names the bike's members.
func (b *Bike) Members(m *wire.Members) {
	m.String("id", &b.ID, wire.Required)
	m.String("card", &b.Card, wire.Required)
	m.String("called", &b.Called)
	m.String("plate", &b.Plate)
	m.String("frame", &b.Frame)
	m.String("words", &b.Words)
	m.String("owner", &b.Owner)
	m.String("reach", &b.Reach)
	wire.Text(m, "aside", &b.Aside)
	m.String("into", &b.Into)
	wire.Texts(m, "jobs", &b.Jobs)
	wire.List(m, "figures", &b.Figures)
	wire.List(m, "odometer", &b.Odometer)
	wire.List(m, "photos", &b.Photos)
}

// Photo is a picture of a bike.
type Photo struct {
	ID   string // of its fact
	What string // what it shows
}

// Members names the photo's members.
func (p *Photo) Members(m *wire.Members) {
	m.String("id", &p.ID, wire.Required)
	m.String("what", &p.What)
}

// telling gives where a telling stands; nil for what there is none of.
func (b *Bike) telling(what Telling) *string {
	switch what {
	case Called:
		return &b.Called
	case Plate:
		return &b.Plate
	case Frame:
		return &b.Frame
	case Words:
		return &b.Words
	case Owner:
		return &b.Owner
	case Reach:
		return &b.Reach
	}
	return nil
}

// own gives the figure of that name, without a value where the bike has none of it.
func (b *Bike) own(what string) *card.Own {
	at, known := b.figureAt[what]
	if !known {
		if b.figureAt == nil {
			b.figureAt = map[string]int{}
		}
		at = len(b.Figures)
		b.figureAt[what] = at
		b.Figures = append(b.Figures, card.Own{What: what})
	}
	return &b.Figures[at]
}
