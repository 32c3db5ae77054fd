package job

import (
	"cmp"
	"slices"
	"strings"

	"tidysump/internal/finding"
)

// unreadShown is how many of the events that can't be read are told: all are counted.
const unreadShown = 20

// unread reports the events that couldn't be read. They have no effect, and keep no
// other from having its own.
func (r *replayer) unread(h *History) {
	list := unreadable(h.Events, "/events")
	r.state.Unread = len(list)
	list = append(list, unreadable(h.Beside, "/beside")...)
	slices.SortStableFunc(list, func(x, y *placed) int {
		return cmp.Or(strings.Compare(x.ID, y.ID), strings.Compare(x.Time, y.Time), strings.Compare(string(x.Kind), string(y.Kind)),
			strings.Compare(*x.Event.unread, *y.Event.unread))
	})
	for _, e := range list[:min(len(list), unreadShown)] {
		r.fault(e, "event-unread", "", finding.Doubt, "id", finding.Clip(e.ID), "time", finding.Clip(e.Time),
			"kind", finding.Clip(string(e.Kind)), "member", *e.Event.unread)
	}
}

func unreadable(events []Event, list string) []*placed {
	var all []*placed
	for at := range events {
		if e := &events[at]; e.unread != nil {
			all = append(all, &placed{Event: e, list: list, at: at})
		}
	}
	return all
}
