package job

import (
	"bytes"
	"hash/fnv"
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// content is an event as one of those under its id.
type content struct {
	placed
	text []byte // canonical
}

// digest names a content: FNV-1a of 64 bits over its canonical text, in hexadecimal.
func (c *content) digest() string {
	h := fnv.New64a()
	h.Write(c.text)
	text := strconv.FormatUint(h.Sum64(), 16)
	return strings.Repeat("0", 16-len(text)) + text
}

// contents gives each event once, in order, and the contents of those that have more
// than one, by their ids, the one that is here first. Of two contents in History.Events the earlier
// is here; one that stands beside nothing is here too, for it is all there is of it.
func contents(h *History) (list []placed, disputed map[string][]content) {
	most := number(h.Events)
	var events, beside []placed
	for at := range h.Events {
		if e := &h.Events[at]; len(e.unread) == 0 {
			events = append(events, place(e, "/events", at, most))
		}
	}
	for at := range h.Beside {
		if e := &h.Beside[at]; len(e.unread) == 0 {
			beside = append(beside, place(e, "/beside", at, most))
		}
	}
	slices.SortStableFunc(events, inOrder)
	slices.SortStableFunc(beside, inOrder)
	here := map[string]int{}
	disputed = map[string][]content{}
	for _, e := range append(events, beside...) {
		n, known := here[e.ID]
		switch {
		case e.ID == "":
			list = append(list, e) // nothing names it, so nothing else can be it
		case !known:
			here[e.ID] = len(list)
			list = append(list, e)
		default:
			disputed[e.ID] = withContent(disputed[e.ID], &list[n], &e)
		}
	}
	sortEvents(list)
	return list, disputed
}

// withContent adds another content of an event, unless it is there.
func withContent(list []content, here, other *placed) []content {
	if len(list) == 0 {
		list = []content{{*here, wire.Write(&here.Event)}}
	}
	text := wire.Write(&other.Event)
	for i := range list {
		if bytes.Equal(list[i].text, text) {
			return list
		}
	}
	return append(list, content{*other, text})
}

// settle puts in place of each disputed event the content that the person chose, and
// tells what is disputed. Which choices hold follows from the contents that are here:
// a choice can't make another one.
func (r *replayer) settle(list []placed, disputed map[string][]content) []placed {
	gone := takenBack(list).gone
	chosen := map[string]int{}
	for i := range list {
		e := &list[i]
		if e.Kind != Choose || e.ID == "" || e.timeless || gone[e.ID] {
			continue
		}
		n := slices.IndexFunc(disputed[e.About], func(c content) bool { return c.digest() == e.Value })
		if n < 0 || len(disputed[e.About]) < 2 {
			r.fault(e, "choose-unknown", "/value", finding.Refuse)
			continue
		}
		chosen[e.About] = n
		r.chose[e.ID] = true
	}
	for i := range list {
		all := disputed[list[i].ID]
		if len(all) < 2 {
			continue // no other content, or the same once more
		}
		n := chosen[list[i].ID]
		d := Dispute{ID: list[i].ID}
		for k := range all {
			c := &all[k]
			d.Variants = append(d.Variants, Variant{Digest: c.digest(), Event: c.Event, Here: k == 0 && c.list == "/events", Counts: k == n})
		}
		slices.SortFunc(d.Variants[1:], func(x, y Variant) int { return strings.Compare(x.Digest, y.Digest) })
		r.state.Disputed = append(r.state.Disputed, d)
		list[i] = all[n].placed
	}
	sortEvents(list)
	return list
}
