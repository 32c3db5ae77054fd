package place

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Taken is a card with readings taken.
type Taken struct {
	Card *card.Card
	// At are the places in it, as JSON pointers, one for each reading; empty where it has
	// none. A reading that the card contradicts has its place too.
	At []string
	// Findings are at /readings/N of what was read, else at /card.
	Findings []finding.Finding
}

// MostReadings is how many readings are taken in one go: more than all that there can be.
const MostReadings = 500

// Take takes readings of a page into a card, which is not changed. What the card says
// already and the page doesn't contradict stays; where they differ the card stays as it is,
// and both are told, unless the person chose the reading. What can't be used is left out,
// and spoils nothing else. In which order readings are handed in makes no difference.
func Take(c *card.Card, list []Reading, page *Page, system quantity.System) *Taken {
	t := &taking{page: page, system: system, list: list, refused: make([]bool, len(list))}
	for t.again = true; t.again; {
		t.run(c)
		if !t.again {
			t.check()
		}
	}
	t.tell(c)
	return &Taken{t.card, t.at, t.findings}
}

// Of gives the place of a card that a reading goes to, as a JSON pointer into it: where
// the card lacks the part, into the card as it will be. Empty where there is no such name.
func Of(c *card.Card, what What) string {
	n := rank(what)
	if n < 0 {
		return ""
	}
	next := copyOf(c)
	s, _ := next.Slot(partsOf(next).name(&entries[n]))
	return s.At
}

// Places is Of for several readings, with a place for each.
func Places(c *card.Card, list []Reading) []string {
	at := make([]string, len(list))
	known := map[What]string{}
	for n := range list {
		what := list[n].What
		if _, ok := known[what]; !ok {
			known[what] = Of(c, what)
		}
		at[n] = known[what]
	}
	return at
}

func copyOf(c *card.Card) *card.Card {
	next := &card.Card{}
	wire.Read(wire.Write(c), next)
	return next
}

// taking is one run of taking readings. What is refused is left out of the next.
type taking struct {
	page    *Page
	system  quantity.System
	list    []Reading
	refused []bool
	again   bool // something was refused: all begins anew without it
	*parter
	source   string
	names    []string        // of the places, by reading
	entered  map[string]bool // names of places that this page has filled
	at       []string
	notes    []finding.Finding // of this run
	found    []finding.Finding // by the card's own check, once nothing is refused any more
	findings []finding.Finding
}

// order gives the numbers of the readings as they are taken: those that the person chose
// first, then as the list of names has them, then as they stand on the page.
func (t *taking) order() []int {
	var order []int
	for n := range t.list {
		if !t.refused[n] {
			order = append(order, n)
		}
	}
	first := func(over bool) int {
		if over {
			return 0
		}
		return 1
	}
	ranks := make([]int, len(t.list))
	for n := range t.list {
		ranks[n] = rank(t.list[n].What)
	}
	slices.SortStableFunc(order, func(x, y int) int {
		a, b := &t.list[x], &t.list[y]
		return cmp.Or(cmp.Compare(ranks[x], ranks[y]), cmp.Compare(first(a.Over), first(b.Over)),
			cmp.Compare(a.Quote.From, b.Quote.From), cmp.Compare(a.Text, b.Text))
	})
	return order
}

func (t *taking) run(c *card.Card) {
	t.again, t.notes = false, nil
	t.parter = partsOf(copyOf(c))
	t.names, t.entered = make([]string, len(t.list)), map[string]bool{}
	order := t.order()
	for _, n := range order {
		what := string(t.list[n].What)
		t.said[what] = true
		if rest, ok := strings.CutPrefix(what, "bolt."); ok {
			name, _, _ := strings.Cut(rest, ".")
			t.said[name] = true
		}
	}
	for _, n := range order {
		t.put(n)
	}
	t.settle()
}

// leaveOut leaves a reading out for what is found about it, and begins anew.
func (t *taking) leaveOut(n int, list []finding.Finding) {
	t.refused[n], t.again = true, true
	for _, f := range list {
		if f.Grade == finding.Refuse {
			f.Where = "/readings/" + strconv.Itoa(n)
			t.findings = append(t.findings, f)
			return
		}
	}
}

// note notes something about a reading in this run.
func (t *taking) note(n int, f finding.Finding) {
	f.Where = "/readings/" + strconv.Itoa(n)
	t.notes = append(t.notes, f)
}

// put puts a reading into the card.
func (t *taking) put(n int) {
	r := &t.list[n]
	i := rank(r.What)
	if n >= MostReadings {
		t.leaveOut(n, finding.Refusal("too-many-readings", "", "most", strconv.Itoa(MostReadings)))
		return
	}
	if i < 0 {
		t.leaveOut(n, finding.Refusal("unknown-word", "", "text", finding.Clip(string(r.What))))
		return
	}
	if r.Model != "" && t.page.Model != "" && r.Model != t.page.Model {
		t.note(n, finding.Finding{Code: "reading-other-model", Grade: finding.Note, Values: finding.Values("model", finding.Clip(r.Model))})
		return
	}
	words, ok := t.page.words(r.Quote)
	if !ok {
		t.leaveOut(n, finding.Refusal("quote-outside", ""))
		return
	}
	e := &entries[i]
	name := t.name(e)
	s, _ := t.card.MakeSlot(name)
	v, list := t.read(e, &s, r.Text)
	if finding.Refused(list) {
		t.leaveOut(n, list)
		return
	}
	for _, f := range list {
		if f.Code == "unit-read-as" || f.Code == "rest-not-read" {
			t.note(n, f)
		}
	}
	t.names[n] = name
	t.enter(n, e, &s, v, words)
}

// enter enters what was read, unless the card says otherwise.
func (t *taking) enter(n int, e *entry, s *card.Slot, v *value, words string) {
	name := t.names[n]
	has := s.Says()
	if e.at == "yearFrom" && len(has) > 0 {
		has = []string{years(t.card)}
	}
	known := len(has) > 0 && !t.weak(e, name) && !v.closer(e, s)
	switch {
	case known && v.within(t, e, s) && !(t.list[n].Over && v.text() != strings.Join(has, ", ")):
		t.attach(s, name, v, words)
		return
	case known && !t.gives(n, name, s, has):
		f := finding.Finding{Code: "reading-differs", Grade: finding.Doubt,
			Values: finding.Values("has", finding.Clip(strings.Join(has, ", ")), "given", finding.Clip(v.text()))}
		if t.entered[name] {
			f = finding.Finding{Code: "reading-twice", Grade: finding.Doubt, Values: f.Values}
		}
		t.note(n, f)
		return
	}
	if !isList(s) {
		t.unquote(name)
	}
	t.entered[name] = true
	v.put(t, e, name, s)
	t.quote(name, v, words)
}

// isList reports whether a place holds several words.
func isList(s *card.Slot) bool { return s.Words != nil || s.Split }

// gives reports whether what stands at a place gives way to a reading, or takes it beside
// itself: a list that pages made takes more, one that somebody wrote takes nothing that he
// didn't choose. Of two readings of one thing the first stays.
func (t *taking) gives(n int, name string, s *card.Slot, has []string) bool {
	over := t.list[n].Over
	if !isList(s) {
		return over && !t.entered[name]
	}
	if over && !t.entered[name] {
		t.unquote(name)
		if s.Split {
			*s.Text = ""
		} else {
			*s.Words = nil
		}
	}
	return over || t.entered[name] || t.quoted(name, has)
}

// weak reports whether what stands there goes without saying of a part of which the card
// says nothing else: how often a filter is due, and with what it is turned. That a filter's
// kind is not known says nothing either.
func (t *taking) weak(e *entry, name string) bool {
	id, _, _ := strings.Cut(name, "/")
	if e.of == ofFilter && e.at == "kind" && t.filter(card.KindUnknown).Kind == card.KindUnknown {
		return true
	}
	return t.bare[id] && !t.entered[name] && (e.at == "drive" || e.at == "everyNth" || e.at == "kind")
}

// check refuses readings for what the card's own check refuses at their places.
func (t *taking) check() {
	t.found = card.Check(t.card)
	for _, f := range t.found {
		if f.Grade != finding.Refuse {
			continue
		}
		for n := range t.list {
			if !t.refused[n] && t.entered[t.names[n]] && within(f.Where, t.pointer(n)) {
				t.leaveOut(n, []finding.Finding{f})
				break
			}
		}
	}
}

// pointer gives the place of a reading in the card as it is now.
func (t *taking) pointer(n int) string {
	if t.names[n] == "" {
		return ""
	}
	s, _ := t.card.Slot(t.names[n])
	return s.At
}

// within reports whether a finding is about what stands at a place; a year is about both.
func within(where, at string) bool {
	return at != "" && (where == at || strings.HasPrefix(where, at+"/") || at == "/yearFrom" && where == "/yearTo")
}

// tell tells where the readings went, what the check finds about them, and what it finds
// about the rest of the card and did not before.
func (t *taking) tell(before *card.Card) {
	t.findings = append(t.findings, t.notes...)
	known := map[string]bool{}
	for _, f := range card.Check(before) {
		known[f.Code+" "+f.Where] = true
	}
	t.at = make([]string, len(t.list))
	for n := range t.list {
		t.at[n] = t.pointer(n)
	}
	for _, f := range t.found {
		told := false
		for n, at := range t.at {
			if within(f.Where, at) {
				f := f
				f.Where, told = "/readings/"+strconv.Itoa(n), true
				t.findings = append(t.findings, f)
			}
		}
		if !told && !known[f.Code+" "+f.Where] {
			f.Where = "/card" + f.Where
			t.findings = append(t.findings, f)
		}
	}
}
