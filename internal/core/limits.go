package core

import (
	"tidysump/internal/books"
	"tidysump/internal/card"
	"tidysump/internal/find"
	"tidysump/internal/finding"
	"tidysump/internal/garage"
	"tidysump/internal/job"
	"tidysump/internal/ledger"
	"tidysump/internal/manual"
	"tidysump/internal/oil"
	"tidysump/internal/outlook"
	"tidysump/internal/place"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// nothing is the input of an operation that is asked for nothing in particular. It
// has a size, so that two are never one.
type nothing struct{ _ byte }

func (*nothing) Members(*wire.Members) {}

// limitsAnswer is what a page has to know before it asks for anything else. It is
// the same at each call.
type limitsAnswer struct {
	call, text, events           int // bytes; the events of a job in all
	note, reading, entry, remark int // letters that are offered to be typed
	value, seq                   int // letters of what is told in a fact; the highest number of one
	jobs, survey                 int // of a bike; in one call
	photos                       []plan.Motif
	systems                      []quantity.System
	places, getHomeAt            []plan.Place
	personal                     []ledger.Person  // facts that tell of a person
	told, whose                  []garage.Telling // of a bike, and of its owner
	aside                        []garage.Reason
	figures                      []card.OwnFigure // that a bike may have of its own
	goods                        []books.Goods    // that may lie on a shelf
	things                       []find.Thing     // that may be asked of a bike, and what asks for nothing
	washers, rings               []card.SealKind  // that goods of these kinds may be
	wastes                       []oil.Waste      // kinds of old oil
	page                         int              // bytes of the text of pages that are read in one go
	whats                        []place.What     // what may be read there
	languages                    []string         // in which it is read
}

func (a *limitsAnswer) Members(m *wire.Members) {
	m.Int("call", &a.call)
	m.Int("text", &a.text)
	m.Int("events", &a.events)
	m.Int("note", &a.note)
	m.Int("reading", &a.reading)
	m.Int("entry", &a.entry)
	m.Int("remark", &a.remark)
	m.Int("value", &a.value)
	m.Int("seq", &a.seq)
	m.Int("jobs", &a.jobs)
	m.Int("survey", &a.survey)
	wire.Texts(m, "photos", &a.photos)
	wire.Texts(m, "systems", &a.systems)
	wire.Texts(m, "places", &a.places)
	wire.Texts(m, "getHomeAt", &a.getHomeAt)
	wire.List(m, "personal", &a.personal)
	wire.Texts(m, "told", &a.told)
	wire.Texts(m, "whose", &a.whose)
	wire.Texts(m, "aside", &a.aside)
	wire.Texts(m, "figures", &a.figures)
	wire.Texts(m, "goods", &a.goods)
	wire.Texts(m, "things", &a.things)
	wire.Texts(m, "washers", &a.washers)
	wire.Texts(m, "rings", &a.rings)
	wire.Texts(m, "wastes", &a.wastes)
	m.Int("page", &a.page)
	wire.Texts(m, "whats", &a.whats)
	wire.Texts(m, "languages", &a.languages)
}

func limits(*nothing, []finding.Finding) (*limitsAnswer, []finding.Finding) {
	return &limitsAnswer{
		call: MaxInput, text: wire.MaxText, events: job.MostBytes,
		note: job.NoteLetters, reading: job.ReadingLetters, entry: card.EntryLetters, remark: card.RemarkLetters,
		value: ledger.ValueLetters, seq: ledger.MostSeq, personal: ledger.Persons, told: garage.OfMachine, whose: garage.OfOwner, aside: garage.Reasons, figures: card.OwnFigures, goods: books.AllGoods, things: find.Named, washers: books.SealsOf(books.WasherGoods), rings: books.SealsOf(books.RingGoods), wastes: oil.Wastes, page: wire.MaxLong, whats: place.Whats(), languages: manual.Languages(),
		jobs: outlook.MostJobs, survey: mostSurveyed, photos: plan.Motifs, systems: quantity.Systems, places: plan.Places, getHomeAt: plan.GetHomeAt,
	}, nil
}
