package job

import (
	"tidysump/internal/wire"
)

// Photo: a picture was taken. What says what it shows; the picture itself lies in
// the phone's store under the event's id.
const Photo EventKind = "photo"

// pictured lists what a photo may show.
var pictured = []string{"plug", "pan", "filter", "seal", "odometer", "other"}

// Picture is a photo that counts.
type Picture struct {
	ID   string // of the event, and of the picture in the phone's store
	Time string
	Step string
	What string // it shows
}

// Members names the members of a photo.
func (p *Picture) Members(m *wire.Members) {
	m.String("id", &p.ID)
	m.String("time", &p.Time)
	m.String("step", &p.Step)
	m.String("what", &p.What)
}

// isPictured reports whether a photo may be said to show that.
func isPictured(what string) bool {
	for _, p := range pictured {
		if p == what {
			return true
		}
	}
	return false
}
