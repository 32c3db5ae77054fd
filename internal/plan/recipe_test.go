package plan

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
	"tidysump/specs"
)

// full is a day about which all is known, so that what a recipe names and nobody
// knows can be known from what a card leaves out.
func full() (*day, map[string]subject) {
	figure := func(value float64, unit string) *card.Figure {
		return &card.Figure{Value: value, Unit: unit, Standing: card.Measured, Method: "by hand"}
	}
	c := &card.Card{ID: "full", Circuits: []card.Circuit{{ID: "engine", Role: card.EngineOil,
		Oil:     card.OilNeed{Grades: []string{"10W-40"}, Standing: card.Measured},
		OilOnly: figure(2, "L"), WithFilt: figure(2.2, "L"), Warm: &card.Warming{Target: figure(60, "°C"), Time: figure(5, "min")},
		Level: card.Level{Device: card.Window, State: card.Warm, Stance: card.Upright, Run: figure(4, "min"), Wait: figure(3, "min"), Band: figure(0.5, "L")}}},
		Bolts: []card.Bolt{{ID: "drain", Purpose: card.DrainPlug, Circuit: "engine", Drains: true, Drive: card.Hexagon, Thread: "M14x1.5",
			Size: figure(17, "mm"), Torque: figure(25, "N·m"), Turn: figure(1, "turn"),
			Seal: &card.Seal{Kind: card.ORing, Inner: figure(14, "mm")}}}}
	c.Interval.Span = card.Span{Distance: figure(6000, "km"), Time: figure(12, "months"), Hours: figure(15, "h")}
	d := &day{card: c, bench: &Bench{System: quantity.Metric}, print: shown.Printer{System: quantity.Metric}, circuits: []*card.Circuit{&c.Circuits[0]}}
	return d, map[string]subject{"circuit": {circuit: &c.Circuits[0]}, "bolt": {bolt: &c.Bolts[0]}, "nothing": {}}
}

// known tries a name with each kind of subject, since a name that is about a
// circuit says nothing of a fastener.
func known(subjects map[string]subject, try func(subject) bool) bool {
	for _, on := range subjects {
		ok := func() (ok bool) {
			defer func() { _ = recover() }() // asked of the wrong kind of subject
			return try(on)
		}()
		if ok {
			return true
		}
	}
	return false
}

// Every figure, reading, timer and calculation that a recipe names is one that the
// plan knows to make, and each figure is itself and no other.
func TestRecipes_NamesAreKnown(t *testing.T) {
	d, subjects := full()
	texts := map[string]string{}
	for _, r := range recipes {
		for _, name := range r.figures {
			ok := known(subjects, func(on subject) bool {
				s := d.figure(name, on)
				texts[s.Name] = s.First()
				return s.Standing != card.Unknown && s.Name == "figure."+name
			})
			if !ok {
				t.Errorf("%s: nobody knows how to show %q", r.word, name)
			}
		}
		for _, what := range r.asks {
			if !slices.Contains(Readings, what) {
				t.Errorf("%s asks for %q", r.word, what)
			}
		}
		for _, what := range r.timers {
			if !slices.Contains(Timers, what) || !known(subjects, func(on subject) bool { _, ok := d.timer(what, on); return ok }) {
				t.Errorf("%s: nobody knows how long %q takes", r.word, what)
			}
		}
		for _, op := range r.helps {
			if !known(subjects, func(on subject) bool { _, ok := d.help(op, on); return ok }) && op != "torque-guess" {
				t.Errorf("%s: nobody knows how to fill in %q", r.word, op)
			}
		}
	}
	if s := d.figure("mood", subject{}); s.Standing != card.Unknown || len(s.Texts) > 0 {
		t.Errorf("an unknown figure shows %+v", s)
	}
	for name, want := range map[string]string{"figure.interval-distance": "6000 km", "figure.interval-time": "12 months", "figure.interval-hours": "15 h"} {
		if texts[name] != want {
			t.Errorf("%s is %s, want %s", name, texts[name], want)
		}
	}
}

// Every recipe is a step of some sample bike, with all that can be done to it: one that
// no sequence puts would be written for nobody.
func TestRecipes_EachIsAStep(t *testing.T) {
	steps := map[string]bool{}
	note := func(c *card.Card, b Bench) {
		checked, list := card.Accept(c)
		if checked == nil {
			t.Fatalf("%s: %v", c.ID, list)
		}
		p, list := Make(checked, b)
		if p == nil {
			t.Fatalf("%s, %+v: %v", c.ID, b, list)
		}
		for _, s := range p.Steps {
			steps[strings.TrimPrefix(s.Word, "step.")] = true
		}
	}
	for name, text := range specs.Cards() {
		c, list := card.Read(text)
		if len(list) > 0 {
			t.Fatalf("%s: %v", name, list)
		}
		var all Bench
		for i := range c.Circuits {
			all.Circuits = append(all.Circuits, c.Circuits[i].ID)
		}
		for i := range c.Filters {
			all.Also = append(all.Also, c.Filters[i].ID)
		}
		for i := range c.Strain {
			all.Also = append(all.Also, c.Strain[i].ID)
		}
		note(c, Bench{})
		note(c, Bench{Helper: true})
		for _, place := range Places {
			note(c, Bench{Place: place, GetHome: true})
			note(c, Bench{Place: place})
		}
		note(c, all)
		for i := range c.Circuits {
			c.Circuits[i].OilOnly, c.Circuits[i].WithFilt, c.Circuits[i].Dry = nil, nil, nil
		}
		for i := range c.Bolts {
			b := &c.Bolts[i]
			b.Torque, b.Turn = nil, nil
			for k := range c.Bolts[:i] {
				if other := &c.Bolts[k]; other.Holds == b.Holds && b.Holds != "" && b.Behind == "" {
					other.Behind, c.Filters[0].EveryNth = b.ID, 1
				}
			}
		}
		note(c, all)
		for i := range c.Filters { // and where nobody looked of what kind it is
			f := &c.Filters[i]
			if f.Kind == card.Centrifugal {
				continue
			}
			for n := range c.Bolts {
				if b := &c.Bolts[n]; b.Holds == f.ID && b.Purpose == f.Kind.HeldBy() {
					b.Purpose = card.FilterClosed
				}
			}
			f.Kind = card.KindUnknown
		}
		note(c, all)
	}
	for _, r := range recipes {
		if !steps[r.word] {
			t.Errorf("no sample bike has the step %s: put it into the sequence (sequence.go, opening_steps.go)", r.word)
		}
	}
}

// Every caution has one signal word: one that was forgotten would be shown as a NOTICE,
// whatever it warns of.
func TestSignals_EachCautionHasOne(t *testing.T) {
	// Raised by what was found in the job, and by what is open in it.
	rows, raised := map[string]int{}, map[string]bool{"found-stop": true, "still-open": true}
	for _, s := range signals {
		for _, word := range s.words {
			rows[word]++
		}
	}
	for _, r := range recipes {
		for _, word := range r.warns {
			raised[word] = true
		}
	}
	for word := range raised {
		if rows[word] != 1 {
			t.Errorf("the caution %s stands %d times in signals (recipe.go), want once", word, rows[word])
		}
	}
	for word := range rows {
		if !raised[word] {
			t.Errorf("no step raises the caution %s", word)
		}
	}
}

// Every reading that is typed is read in a unit, in each system.
func TestAsk_EveryReadingHasAUnit(t *testing.T) {
	for _, what := range Readings {
		isWord := what == AskLevel || what == AskLeak
		for _, system := range quantity.Systems {
			unit := unitAsked(what, system)
			if _, known := quantity.Find(unit); known == isWord {
				t.Errorf("%s in %s is read in %q", what, system, unit)
			}
		}
	}
}
