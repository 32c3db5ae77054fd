package place

import (
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Stand is how a reading stands: as it was read, then as the person decided about it. ""
// is of one that is not sure, and about which nobody decided.
type Stand string

// How readings stand.
const (
	Sure    Stand = "sure"
	TakenIn Stand = "taken"
	Refused Stand = "refused" // it was taken, and the card didn't take it
	LeftOut Stand = "left"
)

// Judged says of readings of one manual, each called by its number from 0, what is sure and
// what has to be decided.
type Judged struct {
	Sure      []int  // those that nobody decided about and nothing contradicts
	Asked     []int  // for each reading the number of the question that it is asked in, from 1; 0 for none
	Contested []What // what readings contradict each other in
}

// Members names the members of what is judged.
func (j *Judged) Members(m *wire.Members) {
	m.Ints("sure", j.Sure)
	m.Ints("asked", j.Asked)
	wire.Texts(m, "contested", &j.Contested)
}

// Judge judges the readings of all pages of a manual, as they stand or as the person typed
// them. What readings contradict each other in, however sure and on whichever pages, is one
// question with all that is said of it and not left out; other readings of one thing that
// are not sure are one too, but for those of a list, of which each counts. What the bike is
// is asked first. models are those that the pages are of, where nobody said yet which of
// them the bike is: what depends on it isn't asked before.
func Judge(list []Reading, models []string) *Judged {
	t := &taking{page: &Page{}, system: quantity.Metric, parter: partsOf(Bare(card.WetSump))}
	j := &Judged{Asked: make([]int, len(list))}
	ranks := make([]int, len(list))
	for n := range list {
		ranks[n] = rank(list[n].What)
	}
	question := 0
	for i := range entries {
		of := (i + len(entries) - len(bikeMembers)) % len(entries)
		e := &entries[of]
		var all []*Reading
		var at []int
		for n := range list {
			if ranks[n] == of {
				all, at = append(all, &list[n]), append(at, n)
			}
		}
		if len(all) == 0 {
			continue
		}
		contested := t.contradict(e, all)
		if contested {
			j.Contested = append(j.Contested, e.what)
		}
		begun, waits := false, false
		for _, r := range all {
			waits = waits || contested && r.waits(models)
		}
		for k, r := range all {
			switch {
			case r.Stand == LeftOut || r.Stand == TakenIn && !contested:
			case r.Stand == Sure && !contested:
				j.Sure = append(j.Sure, at[k])
			case waits || r.waits(models):
			default:
				if !begun || e.lists() {
					question++
				}
				begun = true
				j.Asked[at[k]] = question
			}
		}
	}
	return j
}

// lists reports whether there may be several of it, of which each counts.
func (e *entry) lists() bool { return strings.HasPrefix(e.at, "oil/") }

// waits reports whether a reading depends on which of several models the bike is.
func (r *Reading) waits(models []string) bool {
	for _, m := range models {
		if r.Model != "" || r.Text == m {
			return true
		}
	}
	return false
}

// contradict reports whether two readings of one thing, of which nobody left out either,
// are of no two models and can't both be so: with one of them in a card the other differs.
func (t *taking) contradict(e *entry, all []*Reading) bool {
	name := t.name(e)
	for i, r := range all {
		s, _ := t.card.MakeSlot(name)
		v, list := t.read(e, &s, r.Text)
		if finding.Refused(list) || r.Stand == LeftOut || e.lists() {
			continue // of a doubt alone there is no text
		}
		v.put(t, e, name, &s)
		s, _ = t.card.MakeSlot(name)
		for _, o := range all[i+1:] {
			if o.Stand == LeftOut || r.Model != o.Model && r.Model != "" && o.Model != "" {
				continue
			}
			if v, list := t.read(e, &s, o.Text); !finding.Refused(list) && !v.within(t, e, &s) && !v.closer(e, &s) {
				return true
			}
		}
	}
	return false
}
