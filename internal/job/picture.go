package job

import (
	"tidysump/internal/wire"
)

// Photo: a picture was taken. What says what it shows; the picture itself lies in
// the phone's store under the event's id.
const Photo EventKind = "photo"

// Picture is a photo that counts.
type Picture struct {
	ID   string // of the event, and of the picture in the phone's store
	Time string
	Step string
	What string // it shows: a plan.Motif
}

// Members names the members of a photo.
func (p *Picture) Members(m *wire.Members) {
	m.String("id", &p.ID, wire.Required)
	m.String("time", &p.Time, wire.Required)
	m.String("step", &p.Step)
	m.String("what", &p.What, wire.Required)
}
