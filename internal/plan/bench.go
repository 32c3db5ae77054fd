package plan

import (
	"slices"
	"strconv"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Place is where the work is done.
type Place string

// The places.
const (
	Garage   Place = "garage"
	Roadside Place = "roadside"
)

// Places lists the places, the usual one first.
var Places = []Place{Garage, Roadside}

// GetHomeAt lists the places at which the short form of the job is offered first.
var GetHomeAt = []Place{Roadside}

// Bench is what is true here today. Its zero value is a garage with metric
// units, where the filter is changed and every circuit due at each change is
// done.
type Bench struct {
	System quantity.System
	Place  Place
	// KeepFilter: the filter stays on today.
	KeepFilter bool
	// Circuits are the ids of the circuits done today; empty means those that
	// the card wants at each change.
	Circuits []string
	// Also are the ids of the strainers and centrifugal filters not due at each
	// change that are cleaned today all the same; any other id does nothing.
	Also []string
	// Outside is the air expected until the next change, as typed: "20 °C", "-5 to 30 °C".
	Outside string
	// Severe: the bike is used hard, so that its oil is due earlier.
	Severe bool
	// GetHome: the short form of the job, to top up or to close what leaks and get home.
	// It is no oil change.
	GetHome bool
	// Helper: somebody helps.
	Helper bool
}

// Members names the bench's members.
func (b *Bench) Members(m *wire.Members) {
	m.Lenient()
	wire.Text(m, "system", &b.System)
	wire.Text(m, "place", &b.Place)
	m.Bool("keepFilter", &b.KeepFilter)
	wire.Texts(m, "circuits", &b.Circuits)
	wire.Texts(m, "also", &b.Also)
	m.String("outside", &b.Outside)
	m.Bool("severe", &b.Severe)
	m.Bool("getHome", &b.GetHome)
	m.Bool("helper", &b.Helper)
}

// check fills in what is empty and says what the bench asks for that the card
// doesn't have. Places are JSON pointers within the bench.
func (b *Bench) check(c *card.Card) []finding.Finding {
	if b.System == "" {
		b.System = quantity.Metric
	}
	if b.Place == "" {
		b.Place = Garage
	}
	var list []finding.Finding
	add := func(code, where, text string) {
		list = append(list, finding.Refusal(code, where, "text", text)...)
	}
	if !slices.Contains(quantity.Systems, b.System) {
		add("unknown-word", "/system", string(b.System))
	}
	if !slices.Contains(Places, b.Place) {
		add("unknown-word", "/place", string(b.Place))
	}
	for i, id := range b.Circuits {
		if c.Circuit(id) == nil {
			add("unknown-id", "/circuits/"+strconv.Itoa(i), id)
		}
	}
	return list
}
