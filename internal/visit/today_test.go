package visit_test

import (
	"slices"
	"testing"

	"tidysump/internal/ledger"
	"tidysump/internal/visit"
)

// What is late stands first, then who has to be asked, then what is promised next; what
// was handed over stands last.
func TestToday_Order(t *testing.T) {
	promised := func(value string) ledger.Fact { return fact(1, "said", "promised", value, "") }
	here := func(id string, timers []string, facts ...ledger.Fact) visit.Visited {
		h := visit.Visited{ID: id, Timers: timers}
		h.Facts = facts
		return h
	}
	keys := fact(2, "said", "keys", "one", "")
	asking := fact(3, "trouble", "", "", "Tyre is cut.")
	gone, before := fact(4, "handed", "", "", ""), fact(4, "handed", "", "", "")
	before.Day = "2026-11-29"
	today := visit.TodayInput{Now: "2026-11-30T12:00", Visits: []visit.Visited{
		here("gone", []string{"2026-11-30T09:00:00.000Z"}, promised("2026-11-30T10:00"), gone),
		here("whenever", nil, keys),
		here("evening", []string{"2026-11-30T11:30:00.000Z", "2026-11-30T11:20:00.000Z"}, promised("2026-11-30T18:00")),
		here("asking", nil, promised("2026-12-02T10:00"), asking),
		here("noon", []string{"2026-11-30T11:25:00.000Z"}, promised("2026-11-30T13:00")),
		here("late", nil, promised("2026-11-30T11:59")),
		here("nobody", nil),
		here("yesterday", nil, before),
	}}
	l, list := today.Sort()
	if l == nil {
		t.Fatalf("refused: %+v", list)
	}
	var order []string
	for _, v := range l.Visits {
		order = append(order, v.ID)
		if v.Late != (v.ID == "late") {
			t.Errorf("%s is late: %v", v.ID, v.Late)
		}
	}
	if want := []string{"late", "asking", "noon", "evening", "whenever", "gone"}; !slices.Equal(order, want) {
		t.Errorf("in the order %v, want %v", order, want)
	}
	if l.Next != "evening" || l.Until != "2026-11-30T11:20:00.000Z" {
		t.Errorf("the next timer is %s at %s", l.Next, l.Until)
	}
	if l, list := (&visit.TodayInput{Now: "noon"}).Sort(); l != nil || list[0].Code != "bad-moment" {
		t.Errorf("at noon: %+v %+v", l, list)
	}
}
