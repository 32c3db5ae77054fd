package manual

import "slices"

// filters reads what kind of filter there is and how often filter and strainer are changed.
func (r *readings) filters() {
	r.filterKind()
	for n := range r.terms {
		t := &r.terms[n]
		every, ok := t.begin("every.")
		if !ok || len(every) != 1 {
			continue
		}
		from, to := r.sentenceOf(t.from)
		if every == "1" && r.volumeBeside(t) {
			continue // "if you fit a new filter at the same time, 1.6 litres"
		}
		if t.has("amount.with-filter") { // "with a new filter each time"
			r.say("filter.every", every, t.from, t.to)
			continue
		}
		isIt := func(m *mention) bool {
			return m.part == "filter" || m.part == "strainer" || m.foreign && !r.washedIn(m) // "wash the gauze in petrol"
		}
		before, after := r.near(t.from, from, to, isIt)
		m := before
		if m == nil {
			m = after
		}
		if m == nil && !r.about(from, to, "amount.with-filter") {
			if m = r.spokenOf(t.from, from); m != nil && m.part != "filter" && m.part != "strainer" {
				continue
			}
			if o, _ := r.near(t.from, from, to, func(o *mention) bool { return o.part != "" }); o != nil {
				continue // "replace the drain plug's washer at each oil change"
			}
		}
		if m != nil && m.part == "filter" && r.about(from, t.from, "other.action") && !r.about(from, t.from, "when.change") {
			continue // it is cleaned, and stays
		}
		switch {
		case m != nil && !m.foreign:
			begin, end := min(m.from, t.from), max(m.to, t.to)
			if end-begin > mostBesideEach && r.apart(m.to, t.from) > 1 { // "the gauze is held by a plate and four nuts; at each change take it out"
				begin, end = r.clauseOf(t.from)
			}
			r.say(m.part+".every", every, begin, end)
			if n := r.mentionFrom(m.from) - 1; n >= 0 && r.mentions[n].from >= from && m.to <= t.from { // "strainer and filter"
				if o := &r.mentions[n]; isIt(o) && !o.foreign && o.part != m.part && r.onlyJoins(o.to, m.from) {
					r.say(o.part+".every", every, o.from, t.to)
				}
			}
		case m == nil && r.about(from, to, "amount.with-filter"):
			r.say("filter.every", every, t.from, t.to)
		}
	}
}

// mostBesideEach is how many tokens a part and how often it is changed are apart at most in a quote of
// both; else the clause that says how often is quoted.
const mostBesideEach = 14

// filterKind reads the kind of filter: what is screwed on by its own thread is a spin-on,
// whatever the page calls it.
func (r *readings) filterKind() {
	find := func(sense string) *term {
		for n := range r.terms {
			if t := &r.terms[n]; t.has(sense) && !r.foreignAt(t.from) && !r.otherJob(t.from) && !r.lacking(t.from, t.to) && !r.inTableHead(t) {
				return t
			}
		}
		return nil
	}
	if t := find("part.filter-spin-on"); t != nil {
		r.say("filter.kind", "spin-on", t.from, t.to)
		return
	}
	var turned []Reading // it is told by how far it is turned
	for _, o := range r.list {
		if o.What == "bolt.filter.turn" {
			o.What, o.Text = "filter.kind", "spin-on"
			for i := range r.places { // the sentence says that it is turned by hand
				if r.places[i].from == o.Quote.From {
					from, _ := r.sentenceOf(i)
					q := r.quote(from, i+1, i)
					if q.From == r.places[from].from {
						q = r.quote(r.screwedBefore(from), i+1, i)
					}
					if q.To <= o.Quote.To && o.Quote.To-q.From <= mostQuote {
						o.Quote.From = min(o.Quote.From, q.From)
					}
					for k := from; k < i; k++ { // in a line that stands elsewhere
						if h := r.termAt(k); r.places[k].from < o.Quote.From && h != nil && (h.has("drive.hand") || h.has("action.screw")) {
							begin, end := r.clauseOf(k)
							o.Quote = r.quote(begin, end, k)
							break
						}
					}
					break
				}
			}
			turned = append(turned, o)
			break
		}
	}
	switch from, to := r.filterInHand(); {
	case len(turned) > 0 && r.tornAt(turned[0].Quote.From) && r.filterUnscrewed(&from, &to):
		r.say("filter.kind", "spin-on", from, to)
		return
	case len(turned) > 0 && (to == 0 || r.turnedIn(turned[0].Quote)):
		r.list = append(r.list, turned[0])
		return
	case to > 0:
		r.say("filter.kind", "spin-on", from, to)
		return
	}
	if t := find("part.filter-centrifugal"); t != nil {
		r.say("filter.kind", "centrifugal", t.from, t.to)
		return
	}
	if t := find("part.filter-element"); t != nil {
		if r.hasTorque("bolt.filter.torque", t) && !r.hasCover() {
			if r.hasTorque("bolt.filter.thread", t) { // its own
				r.say("filter.kind", "spin-on", t.from, t.to)
			} else {
				r.say("filter.kind", "spin-on", t.from, t.to, doubt("manual-by-context", "text", "spin-on"))
			}
			return
		}
		r.say("filter.kind", "cartridge", t.from, t.to)
	}
}

// washedIn reports whether a fluid is what a clause has something washed in before it.
func (r *readings) washedIn(m *mention) bool {
	from, _ := r.clauseOf(m.from)
	return r.fluid(m) && r.about(from, m.from, "action.wash")
}

// inTableHead reports whether a term is a cell of the head of a table, also of one of two lines:
// there "element" is what the rows are of.
func (r *readings) inTableHead(t *term) bool {
	n := r.places[t.from].piece
	if slices.Contains(r.dueHeads, n) {
		return true
	}
	from, to := r.pieceTokens(n)
	if !r.pieces[n].cells || r.figureIn(from, to) {
		return false
	}
	if n+1 < len(r.pieces) && r.pieces[n+1].cells {
		_, to = r.pieceTokens(n + 1)
	}
	return r.tableHead(from, to)
}

// screwedBefore gives where the sentence before one begins to say that something is screwed
// on, else where that one begins: "Spin it on until the gasket touches. Then turn it 3/4."
func (r *readings) screwedBefore(from int) int {
	if from == 0 || r.places[from-1].paragraph != r.places[from].paragraph {
		return from
	}
	begin, _ := r.sentenceOf(from - 1)
	for k := from - 1; k >= begin; k-- {
		if t := r.termAt(k); t != nil && t.has("action.screw") {
			begin, _ = r.clauseOf(k)
			return begin
		}
	}
	return from
}

// tornAt reports whether a quote begins within a word that is torn at a line's end.
func (r *readings) tornAt(from int) bool {
	return slices.ContainsFunc(r.places, func(t place) bool { return t.from == from && len(t.text) > t.to-t.from })
}

// turnedIn reports whether words for screwing or for the hand stand in a quote.
func (r *readings) turnedIn(q Span) bool {
	for n := range r.terms {
		if t := &r.terms[n]; r.places[t.from].from >= q.From && r.places[t.to-1].to <= q.To && (t.has("drive.hand") || t.has("action.screw")) {
			return true
		}
	}
	return false
}

// lacking reports whether a clause says of what it names that there is none: "this engine
// has no oil filter". Where something is changed or measured out, it tells of the work.
func (r *readings) lacking(from, to int) bool {
	begin, end := r.clauseOf(to - 1)
	if r.about(begin, end, "when.change") || r.about(begin, end, "action.screw") || r.factIn(begin, end) {
		return false
	}
	for i := to - 1; i >= max(begin, from-mostPhrase); i-- {
		switch t := &r.places[i]; {
		case r.senseAt(i, "not") || r.senseAt(i, "without") || r.senseAt(i, "amount.oil-only"):
			return true
		case i < from && !t.function && len(t.fold) > 2: // "do not fit the filter dry"
			return false
		}
	}
	return false
}

// hasTorque reports whether a torque was read in whose words a term stands: a filter that
// has one of its own is screwed on.
func (r *readings) hasTorque(what string, t *term) bool {
	for i := range r.list {
		if o := &r.list[i]; o.What == what && o.Quote.From <= r.places[t.from].from && r.places[t.to-1].to <= o.Quote.To {
			return true
		}
	}
	return false
}

// filterInHand finds a filter that is itself screwed, turned by hand or with a strap.
func (r *readings) filterInHand() (from, to int) {
	for _, sense := range [...]string{"drive.hand", "action.screw", "device.screwed", "drive.strap", "tool.filter"} { // the plainest first
		if from, to = r.filterTurned(sense); to > 0 {
			break
		}
	}
	return from, to
}

// filterUnscrewed finds a filter named right behind the word for screwing: "Unscrew the filter".
func (r *readings) filterUnscrewed(from, to *int) bool {
	for n := range r.mentions {
		m := &r.mentions[n]
		at := m.from - 1
		for at > 0 && r.places[at].function {
			at--
		}
		if t := r.termAt(at); t != nil && t.has("action.screw") && m.part == "filter" && !m.foreign && r.places[at].clause == r.places[m.from].clause {
			*from, *to = t.from, m.to
			return true
		}
	}
	return false
}

func (r *readings) filterTurned(sense string) (from, to int) {
	for n := range r.terms {
		t := &r.terms[n]
		if !t.has(sense) {
			continue
		}
		begin, end := r.sentenceOf(t.from)
		isFilter := func(m *mention) bool { return m.part != "" || m.foreign || m.loose != 0 }
		before, after := r.near(t.from, begin, end, isFilter)
		if hand := t.has("drive.hand"); before == nil && !hand || hand && after != nil && r.linked(t.to, after.from) { // "hand tighten the filter"
			before = after
		}
		if before == nil && after == nil && sense != "drive.hand" && r.about(begin, t.from, "amount.with-filter") && !r.hasCover() && !r.otherJob(t.from) {
			return begin, t.to // "Replace the filter: oil the gasket and spin it on."
		}
		if before == nil && (t.has("action.screw") || t.has("drive.hand") && r.about(begin, t.from, "device.screwed")) { // "Oil its ring, and screw it on"
			before = r.spokenOf(t.from, begin)
		}
		if before != nil && (r.about(before.from, before.to, "part.plug") || r.about(before.from, before.to, "part.fastener")) {
			continue
		}
		if before != nil && !r.about(before.to, t.from, "part.cover") && !r.hasCover() && before.part == "filter" && !before.foreign && !r.otherJob(t.from) {
			if r.places[before.from].sentence == r.places[t.from].sentence {
				return min(before.from, t.from), max(before.to, t.to)
			}
			from, _ = r.clauseOf(t.from)
			return from, t.to
		}
	}
	return 0, 0
}

// hasCover reports whether the page speaks of a cover over the filter: then the filter is
// no spin-on, and what is screwed is the cover.
func (r *readings) hasCover() bool {
	for n := range r.mentions {
		if m := &r.mentions[n]; m.part == "filter-cover" && !m.foreign {
			return true
		}
	}
	return false
}

// otherJob reports whether the heading over a token is of another job.
func (r *readings) otherJob(at int) bool {
	_, foreign := r.headCircuit(at)
	return foreign
}

// foreignAt reports whether a token is of a mention of another job.
func (r *readings) foreignAt(at int) bool {
	n := r.mentionFrom(at+1) - 1
	return n >= 0 && r.mentions[n].to > at && r.mentions[n].foreign
}
