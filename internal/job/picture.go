package job

import (
	"slices"

	"tidysump/internal/plan"
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

// photo takes a photo in, and reports whether it counts. What another version sorts
// it under is something else here.
func (r *replayer) photo(e *placed) bool {
	what := e.What
	if !slices.Contains(plan.Motifs, plan.Motif(what)) {
		if r.unasked(e, "unknown-picture", "/what", what) {
			return false
		}
		what = string(plan.PhotoOther)
	}
	r.state.Photos = append(r.state.Photos, Picture{e.ID, e.Time, e.Step, what})
	return true
}
