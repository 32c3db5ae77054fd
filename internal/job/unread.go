package job

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// unread reports the events that couldn't be read. They have no effect, and keep no
// other from having its own.
func (r *replayer) unread(h *History) {
	var list []*placed
	for at := range h.Events {
		if e := &h.Events[at]; len(e.unread) > 0 {
			list = append(list, &placed{Event: e, list: "/events", at: at})
		}
	}
	r.state.Unread = len(list)
	for at := range h.Beside {
		if e := &h.Beside[at]; len(e.unread) > 0 {
			list = append(list, &placed{Event: e, list: "/beside", at: at})
		}
	}
	slices.SortStableFunc(list, func(x, y *placed) int {
		return cmp.Or(strings.Compare(x.ID, y.ID), bytes.Compare(wire.Write(x.Event), wire.Write(y.Event)))
	})
	for _, e := range list {
		member, _, _ := strings.Cut(strings.TrimPrefix(e.Event.unread[0].Where, "/"), "/")
		if member == "" {
			member = "@event.whole"
		}
		r.fault(e, "event-unread", "", finding.Doubt, "id", finding.Clip(e.ID), "time", finding.Clip(e.Time),
			"kind", finding.Clip(string(e.Kind)), "member", finding.Clip(member))
	}
}
