package job

import "tidysump/internal/wire"

// Dispute is an event of which there is more than one content under its id.
type Dispute struct {
	ID       string
	Variants []Variant // the one in History.Events first
}

// Members names the members of a dispute.
func (d *Dispute) Members(m *wire.Members) {
	m.String("id", &d.ID, wire.Required)
	wire.List(m, "variants", &d.Variants)
}

// Variant is one content of a disputed event.
type Variant struct {
	Digest string // what an event of the kind Choose names it by
	Event  Event
	Here   bool // it stands in History.Events
	Counts bool
}

// Members names the members of a variant.
func (v *Variant) Members(m *wire.Members) {
	m.String("digest", &v.Digest, wire.Required)
	m.Object("event", &v.Event)
	m.Bool("here", &v.Here)
	m.Bool("counts", &v.Counts)
}
