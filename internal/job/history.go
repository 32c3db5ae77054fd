package job

import (
	"strconv"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// MostBytes is how long the events of a job may be in all before no more are
// written: half of what a call may have, so that a job and the one before it fit into
// one.
const MostBytes = 4 << 20

// History is what happened in a job, as it is stored.
type History struct {
	Started string // time; empty where that isn't known
	Events  []Event
	// Beside are other contents under ids of Events, which came from elsewhere. What
	// stands in Events counts until an event of the kind Choose says otherwise.
	Beside []Event
	// Adding: the last of Events is about to be written. What a record holds is taken
	// as it is; a new event is refused where the plan doesn't ask for it.
	Adding bool

	fresh int // how many of the last are about to be written; 0 for one
}

// Members names the members of what happened.
func (h *History) Members(m *wire.Members) {
	m.String("started", &h.Started)
	wire.List(m, "events", &h.Events)
	wire.List(m, "beside", &h.Beside)
	m.Bool("adding", &h.Adding)
}

// full refuses a new event where the record is full. What takes back, does or ends may
// go a little beyond, so that no job is stuck.
func (r *replayer) full(h *History) {
	if r.newest < 0 {
		return
	}
	most, bytes := MostBytes, 0
	e := &placed{Event: &h.Events[r.newest], list: "/events", at: r.newest}
	if e.Kind == Done || e.Kind == Undo || e.Kind == Finish || e.Kind == Choose {
		most += MostBytes / 16
	}
	for i := range h.Events {
		bytes += len(wire.Write(&h.Events[i]))
	}
	if bytes > most {
		r.fault(e, "record-full", "", finding.Refuse, "most", strconv.Itoa(MostBytes>>20)+" MiB")
	}
}
