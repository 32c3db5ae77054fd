// Package plantest draws cards and benches for the property tests of plans and of
// what follows from them, and checks that their words are in the catalogue.
package plantest

import (
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
	"tidysump/specs"
)

// Card draws a card that the check doesn't refuse: one to three oils, and
// fasteners, filters and strainers in any combination, also in foolish ones.
func Card(t *rapid.T) *card.Card {
	c := &card.Card{Format: card.Format, Version: card.Version, ID: "drawn", Make: "Plainford", Model: "One",
		Layout: card.WetSump, Sources: []card.Source{{ID: "book", Title: "book"}}}
	ids := []string{""}
	for i := range rapid.IntRange(1, 3).Draw(t, "circuits") {
		r := drawCircuit(t, "oil"+strconv.Itoa(i))
		c.Circuits = append(c.Circuits, r)
		ids = append(ids, r.ID)
	}
	circuit := rapid.SampledFrom(ids[1:])
	holders := []string{""}
	for i := range rapid.IntRange(0, 2).Draw(t, "filters") {
		f := card.Filter{ID: "filter" + strconv.Itoa(i), Circuit: circuit.Draw(t, "circuit"),
			Kind: Pick(t, "kind", card.FilterKinds...), Place: Pick(t, "place", "", "in front"), OwnNumber: Pick(t, "own number", "", "shelf 3"), EveryNth: rapid.IntRange(0, 3).Draw(t, "nth"),
			Mount: maybe(t, "mount", card.Mounts), RingWith: maybe(t, "ring with", card.RingsWith), Seals: drawSeals(t)}
		c.Filters = append(c.Filters, f)
		holders = append(holders, f.ID)
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "strainers") {
		s := card.Strainer{ID: "mesh" + strconv.Itoa(i), Circuit: circuit.Draw(t, "circuit"), EveryNth: rapid.IntRange(0, 3).Draw(t, "nth"), Seals: drawSeals(t)}
		c.Strain = append(c.Strain, s)
		holders = append(holders, s.ID)
	}
	for i := range rapid.IntRange(0, 6).Draw(t, "bolts") {
		c.Bolts = append(c.Bolts, drawBolt(t, "bolt"+strconv.Itoa(i), ids, holders))
	}
	for range rapid.IntRange(0, 2).Draw(t, "chart") {
		row := card.ChartRow{Circuit: circuit.Draw(t, "circuit"), Grade: Pick(t, "charted", "10W-40", "20W50", "80W-90")}
		row.From = &card.Degrees{Value: rapid.Float64Range(-30, 10).Draw(t, "from"), Unit: "°C", Standing: card.FromManual, Source: "book"}
		if rapid.Bool().Draw(t, "bounded") {
			row.To = &card.Degrees{Value: 104, Unit: "°F", Standing: card.Measured, Method: "tried"}
		}
		c.Charts = append(c.Charts, row)
	}
	c.Interval.Distance = drawFigure(t, "interval", "km", 6000)
	c.Engine = card.Engine{NoLamp: rapid.Bool().Draw(t, "no lamp"), ReturnSeen: rapid.Bool().Draw(t, "return seen"), NoNeutral: rapid.Bool().Draw(t, "no neutral")}
	drawBehind(t, c)
	for i := range rapid.IntRange(0, 1).Draw(t, "notes of no moment") {
		c.Notes = append(c.Notes, "note of no moment "+strconv.Itoa(i))
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "notes") {
		c.NotesAt = append(c.NotesAt, card.NoteAt{At: Pick(t, "at", card.NotePlaces...), Text: "note " + strconv.Itoa(i)})
	}
	if list := card.Check(c); finding.Refused(list) {
		t.Fatalf("the drawn card is refused: %v", list)
	}
	return c
}

// drawBehind puts some of what comes off behind others, in chains that end. What is
// behind a filter or strainer is behind all that holds it too.
func drawBehind(t *rapid.T, c *card.Card) {
	behind, holders := map[string]*string{}, map[string][]string{}
	var ids []string
	add := func(id string, b *string) {
		ids = append(ids, id)
		behind[id] = b
	}
	for i := range c.Bolts {
		b := &c.Bolts[i]
		add(b.ID, &b.Behind)
		holders[b.Holds] = append(holders[b.Holds], b.ID)
	}
	for i := range c.Filters {
		add(c.Filters[i].ID, &c.Filters[i].Behind)
	}
	for i := range c.Strain {
		add(c.Strain[i].ID, &c.Strain[i].Behind)
	}
	holds := func(id string) string {
		for of, list := range holders {
			if slices.Contains(list, id) {
				return of
			}
		}
		return ""
	}
	var leads func(from, to string, deep int) bool
	leads = func(from, to string, deep int) bool {
		if from == "" || deep > 2*len(ids) {
			return deep > 0 && from != ""
		}
		if from == to {
			return true
		}
		fronts := append([]string{*behind[from]}, holders[from]...)
		if of := holds(from); of != "" {
			fronts = append(fronts, *behind[of])
		}
		return slices.ContainsFunc(fronts, func(f string) bool { return leads(f, to, deep+1) })
	}
	for _, id := range ids {
		of := rapid.IntRange(0, 3*len(ids)).Draw(t, "behind")
		if of < len(ids) && ids[of] != holds(id) && !leads(ids[of], id, 0) && !slices.ContainsFunc(holders[id], func(b string) bool { return leads(ids[of], b, 0) }) {
			*behind[id] = ids[of]
		}
	}
}

func drawCircuit(t *rapid.T, id string) card.Circuit {
	r := card.Circuit{ID: id, WetClutch: rapid.Bool().Draw(t, "wet"),
		Role:     Pick(t, "role", card.Roles...),
		OilOnly:  drawFigure(t, "oil only", "L", 2),
		WithFilt: drawFigure(t, "with filter", "US qt", 2.5),
		EveryNth: rapid.IntRange(0, 2).Draw(t, "nth"),
		Level: card.Level{
			Device: maybe(t, "device", card.Devices),
			State:  maybe(t, "state", card.States),
			Stance: maybe(t, "stance", card.Stances),
			Where:  Pick(t, "where", "", "on the left"),
			Run:    drawFigure(t, "run", "min", 3),
		}}
	if rapid.Bool().Draw(t, "warm") {
		r.Warm = &card.Warming{Target: drawFigure(t, "target", "°C", 60), Time: drawFigure(t, "warm for", "min", 5)}
	}
	if r.Role != card.EngineOil && rapid.Bool().Draw(t, "own interval") {
		r.Interval = &card.Interval{Span: card.Span{Distance: drawFigure(t, "own distance", "km", 24000)}}
	}
	if rapid.Bool().Draw(t, "grade") {
		r.Oil = card.OilNeed{Grades: several(t, "grades", "10W-40", "20W50", "30"), Marks: several(t, "marks", "MA", "MA2", "MB"),
			Service: Pick(t, "service", "", "SL"), Standing: card.FromManual, Source: "book"}
	}
	return r
}

func drawBolt(t *rapid.T, id string, circuits, holders []string) card.Bolt {
	b := card.Bolt{ID: id, Circuit: rapid.SampledFrom(circuits).Draw(t, "circuit"), Holds: rapid.SampledFrom(holders).Draw(t, "of"),
		Purpose: Pick(t, "purpose", card.Purposes...),
		Count:   rapid.IntRange(0, 4).Draw(t, "count"), Drains: rapid.Bool().Draw(t, "drains"), Magnet: rapid.Bool().Draw(t, "magnet"),
		Order:  Pick(t, "order", "", "top, bottom"),
		Drive:  maybe(t, "drive", card.Drives),
		Place:  Pick(t, "place", "", "below"),
		Size:   drawFigure(t, "size", "mm", 17),
		Torque: drawFigure(t, "torque", "N·m", 25),
		Turn:   drawFigure(t, "turn", "turn", 0.75)}
	b.Tank = b.Purpose == card.DrainPlug && rapid.Bool().Draw(t, "tank")
	if seals := drawSeals(t); len(seals) > 0 {
		b.Seal = &seals[0]
	}
	return b
}

func drawSeals(t *rapid.T) []card.Seal {
	if !rapid.Bool().Draw(t, "seal") {
		return nil
	}
	kind := Pick(t, "seal kind", card.SealKinds...)
	return []card.Seal{{Kind: kind, Inner: drawFigure(t, "inner", "mm", 12), Outer: drawFigure(t, "outer", "mm", 16)}}
}

// drawFigure draws a figure that is absent, unknown, single or a range.
func drawFigure(t *rapid.T, label, unit string, value float64) *card.Figure {
	f := &card.Figure{Value: value, Unit: unit, Standing: card.FromManual, Source: "book"}
	switch rapid.IntRange(0, 3).Draw(t, label) {
	case 0:
		return nil
	case 1:
		return &card.Figure{Standing: card.Unknown}
	case 2:
		f.To = value * 1.25
	}
	return f
}

// several draws the first of some texts, or more of them.
func several(t *rapid.T, label string, texts ...string) []string {
	return texts[:rapid.IntRange(1, len(texts)).Draw(t, label)]
}

// Pick draws one of some words.
func Pick[T ~string](t *rapid.T, label string, words ...T) T {
	return rapid.SampledFrom(words).Draw(t, label)
}

// maybe draws one of some words, or none.
func maybe[T ~string](t *rapid.T, label string, words []T) T {
	return Pick(t, label, append([]T{""}, words...)...)
}

// Bench draws a bench of that card.
func Bench(t *rapid.T, c *card.Card) plan.Bench {
	b := plan.Bench{KeepFilter: rapid.Bool().Draw(t, "keep filter"),
		Severe: rapid.Bool().Draw(t, "severe"), Helper: rapid.Bool().Draw(t, "helper"), GetHome: rapid.IntRange(0, 4).Draw(t, "get home") == 4,
		System: rapid.SampledFrom(append([]quantity.System{""}, quantity.Systems...)).Draw(t, "system"),
		Place:  rapid.SampledFrom(append([]plan.Place{""}, plan.Places...)).Draw(t, "place")}
	for _, r := range c.Circuits {
		if rapid.Bool().Draw(t, "does "+r.ID) {
			b.Circuits = append(b.Circuits, r.ID)
		}
	}
	for _, s := range c.Strain {
		drains := slices.ContainsFunc(c.Bolts, func(b card.Bolt) bool { return b.Holds == s.ID && b.Drains })
		if s.EveryNth > 1 && !drains && rapid.Bool().Draw(t, "also "+s.ID) {
			b.Also = append(b.Also, s.ID)
		}
	}
	for _, f := range c.Filters {
		if f.Kind == card.Centrifugal && f.EveryNth > 1 && rapid.Bool().Draw(t, "also "+f.ID) {
			b.Also = append(b.Also, f.ID)
		}
	}
	return b
}

// Benches lists benches of a card: each choice of its oils, the filter changed or kept, all
// cleaned or only what is due, at both places, the whole job and the short form.
func Benches(c *card.Card) []plan.Bench {
	var also []string
	for _, s := range c.Strain {
		also = append(also, s.ID)
	}
	for _, f := range c.Filters {
		also = append(also, f.ID)
	}
	var list []plan.Bench
	for chosen := range 1 << len(c.Circuits) {
		var circuits []string
		for i := range c.Circuits {
			if chosen>>i&1 > 0 {
				circuits = append(circuits, c.Circuits[i].ID)
			}
		}
		for _, keep := range []bool{false, true} {
			for _, clean := range [][]string{nil, also} {
				for _, place := range plan.Places {
					b := plan.Bench{System: quantity.Metric, Place: place, KeepFilter: keep, Circuits: circuits, Also: clean, Helper: keep, Severe: clean == nil}
					home := b
					home.GetHome = true
					list = append(list, b, home)
				}
			}
		}
	}
	return list
}

// Sample reads one of the sample cards.
func Sample(t testing.TB, name string) *card.Card {
	t.Helper()
	c, list := card.Read(specs.Cards()[name+".json"])
	if len(list) > 0 {
		t.Fatalf("%s: %v", name, list)
	}
	return c
}

// Plans runs a check over the plans of drawn cards and benches.
func Plans(t *testing.T, check func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan)) {
	rapid.Check(t, func(t *rapid.T) {
		c := Card(t)
		b := Bench(t, c)
		p, list := Made(c, b)
		if p == nil {
			t.Fatalf("no plan: %v", list)
		}
		check(t, c, b, p)
	})
}

// Samples runs a check over the plans of every sample card on each kind of bench: as
// usual, with the filter kept, at the roadside, on the way home, and with all that can
// be done.
func Samples(t *testing.T, check func(t *testing.T, c *card.Card, b plan.Bench, p *plan.Plan)) {
	for name, text := range specs.Cards() {
		c, list := card.Read(text)
		if len(list) > 0 {
			t.Fatalf("%s: %v", name, list)
		}
		all := plan.Bench{Helper: true}
		for i := range c.Circuits {
			all.Circuits = append(all.Circuits, c.Circuits[i].ID)
		}
		for i := range c.Filters {
			all.Also = append(all.Also, c.Filters[i].ID)
		}
		for i := range c.Strain {
			all.Also = append(all.Also, c.Strain[i].ID)
		}
		for bench, b := range map[string]plan.Bench{"garage": {}, "filter kept": {KeepFilter: true, System: quantity.US},
			"roadside": {Place: plan.Roadside}, "home": {Place: plan.Roadside, GetHome: true}, "all": all} {
			t.Run(name+" "+bench, func(t *testing.T) {
				p, list := Made(c, b)
				if p == nil {
					t.Fatalf("no plan: %v", list)
				}
				check(t, c, b, p)
			})
		}
	}
}

// Unlooked gives a card of whose filters nobody has seen whether they are screwed on or lie
// under a cover.
func Unlooked(c *card.Card) *card.Card {
	next := *c
	next.Filters, next.Bolts = slices.Clone(c.Filters), slices.Clone(c.Bolts)
	for i := range next.Filters {
		f := &next.Filters[i]
		if f.Kind == card.Centrifugal {
			continue
		}
		for n := range next.Bolts {
			if b := &next.Bolts[n]; b.Holds == f.ID && b.Purpose == f.Kind.HeldBy() {
				b.Purpose = card.FilterClosed
				if b.Drive == card.Strap {
					b.Drive = ""
				}
			}
		}
		f.Kind, f.Thread = card.KindUnknown, ""
	}
	return &next
}

// Made makes the plan of a card that is checked first.
func Made(c *card.Card, b plan.Bench) (*plan.Plan, []finding.Finding) {
	checked, list := card.Accept(c)
	if checked == nil {
		return nil, list
	}
	return plan.Make(checked, b)
}
