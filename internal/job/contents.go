package job

import (
	"hash/fnv"
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// digestOf names a content: FNV-1a of 64 bits over its canonical text, in hexadecimal.
func digestOf(e *Event) string {
	h := fnv.New64a()
	h.Write(wire.Write(e))
	text := strconv.FormatUint(h.Sum64(), 16)
	return strings.Repeat("0", 16-len(text)) + text
}

// contents gives each event once, in order, and of those that have several contents all
// of them, by their ids, the one that is here first. Of two contents in History.Events
// the earlier is here; one that stands beside nothing is here too, for it is all there
// is of it. most is how many events there are.
func contents(h *History, most int) (list []*placed, disputed map[string][]*placed) {
	all := append(readable(h.Events, "/events", most), readable(h.Beside, "/beside", most)...)
	here, seen := make(map[string]*placed, len(all)), map[string]bool{}
	disputed = map[string][]*placed{}
	for _, e := range all {
		first := here[e.ID]
		if e.ID == "" || first == nil { // what nothing names can be nothing else
			here[e.ID] = e
			list = append(list, e)
			continue
		}
		if len(disputed[e.ID]) == 0 {
			disputed[e.ID] = []*placed{first}
			seen[string(wire.Write(first.Event))] = true
		}
		if text := string(wire.Write(e.Event)); !seen[text] {
			seen[text] = true
			disputed[e.ID] = append(disputed[e.ID], e)
		}
	}
	sortEvents(list)
	return list, disputed
}

// readable gives the events of a list that could be read, in order.
func readable(events []Event, list string, most int) []*placed {
	var all []*placed
	for at := range events {
		if e := &events[at]; e.unread == nil {
			all = append(all, place(e, list, at, most))
		}
	}
	sortEvents(all)
	return all
}

// settle puts in place of each disputed event the content that the person chose, and
// tells what is disputed. Which choices hold follows from the contents that are here:
// a choice can't make another one.
func (r *replayer) settle(list []*placed, disputed map[string][]*placed) {
	known := map[string]int{} // the contents of each id, by that and their digests
	for _, e := range list {
		all := disputed[e.ID]
		if len(all) < 2 {
			continue // the same once more
		}
		d := Dispute{ID: e.ID}
		for n, c := range all {
			v := Variant{Digest: digestOf(c.Event), Event: *c.Event, Here: n == 0 && c.list == "/events"}
			known[e.ID+" "+v.Digest] = n
			d.Variants = append(d.Variants, v)
		}
		r.state.Disputed = append(r.state.Disputed, d)
	}
	if !slices.ContainsFunc(list, func(e *placed) bool { return e.Kind == Choose }) && len(disputed) == 0 {
		return
	}
	gone := takenBack(list).gone
	chosen := map[string]int{}
	for _, e := range list {
		if e.Kind != Choose || e.ID == "" || e.timeless || gone[e.ID] {
			continue
		}
		n, ok := known[e.About+" "+e.Value]
		if !ok {
			r.fault(e, "choose-unknown", "/value", finding.Refuse)
			continue
		}
		chosen[e.About] = n
		r.chose[e.ID] = true
	}
	for i := range r.state.Disputed {
		d := &r.state.Disputed[i]
		d.Variants[chosen[d.ID]].Counts = true
	}
	for i, e := range list {
		if all := disputed[e.ID]; len(all) > 1 {
			list[i] = all[chosen[e.ID]]
		}
	}
	sortEvents(list)
}
