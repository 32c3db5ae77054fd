package card_test

import (
	"bytes"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// samples are the sample cards, checked.
func samples(t *testing.T) map[string]*card.Checked {
	t.Helper()
	list := map[string]*card.Checked{}
	for name, text := range specs.Cards() {
		c, read := card.Read(text)
		checked, refused := card.Accept(c)
		if checked == nil {
			t.Fatalf("%s: %v, %v", name, read, refused)
		}
		list[strings.TrimSuffix(name, ".json")] = checked
	}
	return list
}

func written(c *card.Checked) []byte { return wire.Write(c.Card()) }

// values are what the tests lay over, by word.
var values = map[card.OwnFigure]string{
	card.OwnVolume: "1.234 L", card.OwnVolumeFilter: "1.345 L", card.OwnGrade: "5W-50", card.OwnThread: "M15x1.5", card.OwnTorque: "21.5 N·m",
	card.OwnSize: "13.5 mm", card.OwnInner: "15.5 mm", card.OwnOuter: "21.5 mm", card.OwnThickness: "1.75 mm", card.OwnNumber: "shelf 4, blue",
}

// parts lists the ids of a card that a figure may be of.
func parts(c *card.Card, word card.OwnFigure) (ids []string) {
	switch word {
	case card.OwnVolume, card.OwnVolumeFilter, card.OwnGrade:
		for i := range c.Circuits {
			ids = append(ids, c.Circuits[i].ID)
		}
	case card.OwnNumber:
		for i := range c.Filters {
			ids = append(ids, c.Filters[i].ID)
		}
	default:
		for i := range c.Bolts {
			if sealed := word != card.OwnInner && word != card.OwnOuter && word != card.OwnThickness; sealed || c.Bolts[i].Seal != nil {
				ids = append(ids, c.Bolts[i].ID)
			}
		}
	}
	return ids
}

// figureAt gives a figure of a card, nil for what is words.
func figureAt(c *card.Card, word card.OwnFigure, id string) *card.Figure {
	switch word {
	case card.OwnVolume:
		return c.Circuit(id).OilOnly
	case card.OwnVolumeFilter:
		return c.Circuit(id).WithFilt
	case card.OwnTorque:
		return c.Bolt(id).Torque
	case card.OwnSize:
		return c.Bolt(id).Size
	case card.OwnInner:
		return c.Bolt(id).Seal.Inner
	case card.OwnOuter:
		return c.Bolt(id).Seal.Outer
	case card.OwnThickness:
		return c.Bolt(id).Seal.Thickness
	}
	return nil
}

// codesAt lists the codes of the findings about one figure.
func codesAt(list []finding.Finding, where string) (codes []string) {
	for _, f := range list {
		if f.Where == where {
			codes = append(codes, f.Code)
		}
	}
	return codes
}

// Each figure lies over each part of each sample card, with its standing and reason, and
// over nothing else.
func TestLay_EverySample(t *testing.T) {
	for name, c := range samples(t) {
		before := written(c)
		for _, word := range card.OwnFigures {
			for _, id := range parts(c.Card(), word) {
				for _, standing := range card.OwnStandings {
					own := []card.Own{{What: string(word) + "." + id, Value: values[word], Standing: standing, Why: "as found"}}
					laid, found := card.Lay(c, own)
					if finding.Refused(found) {
						t.Errorf("%s %s: %v", name, own[0].What, found)
					}
					checkLaid(t, name, c.Card(), laid.Card(), word, id, standing)
				}
			}
		}
		if !bytes.Equal(written(c), before) {
			t.Errorf("%s: the card itself was changed", name)
		}
	}
}

func checkLaid(t *testing.T, name string, before, now *card.Card, word card.OwnFigure, id string, standing card.Standing) {
	t.Helper()
	switch word {
	case card.OwnNumber:
		for i := range now.Filters {
			if f := &now.Filters[i]; f.ID == id && f.OwnNumber != values[word] {
				t.Errorf("%s %s: the number is %q", name, id, f.OwnNumber)
			}
		}
		return
	case card.OwnGrade:
		o := now.Circuit(id).Oil
		if !slices.Equal(o.Grades, []string{"5W-50"}) || o.Standing != standing || o.Method != "as found" || o.Source != "" || now.Chart(id) != nil {
			t.Errorf("%s %s: the oil is %v", name, id, o)
		}
		return
	case card.OwnThread:
		b, was := now.Bolt(id), before.Bolt(id)
		if b.Thread != values[word] {
			t.Errorf("%s %s: the thread is %q", name, id, b.Thread)
		}
		if was.Thread != "" && (b.Torque.Known() || b.Size.Known() || b.Seal != nil && (b.Seal.Inner.Known() || b.Seal.Outer.Known() || b.Seal.Thickness.Known())) {
			t.Errorf("%s %s: what the card says of the old thread stands for the new", name, id)
		}
		if was.Thread == "" && b.Torque.Known() != was.Torque.Known() {
			t.Errorf("%s %s: a thread that the card didn't know took its torque away", name, id)
		}
		return
	}
	f := figureAt(now, word, id)
	amount, ok := f.Amount()
	want, _ := quantity.Parse(amount.Kind, values[word], "", quantity.Metric)
	if !ok || f.Standing != standing || f.Method != "as found" || f.Source != "" || amount.Base != want.Base {
		t.Errorf("%s %s.%s is %v, want %s, %s", name, word, id, f, values[word], standing)
	}
}

// An own torque and own sizes lie over what a changed thread made unknown, in whatever
// order they come.
func TestLay_ThreadWithItsFigures(t *testing.T) {
	c := samples(t)["tessaly-corda-570"]
	own := []card.Own{
		{What: "torque.drain", Value: "24 N·m", Standing: card.Decided, Why: "as the maker of the insert says"},
		{What: "inner.drain", Value: "15.2", Standing: card.Measured, Why: "calliper"},
		{What: "thread.drain", Value: "M15x1.5", Standing: card.Decided, Why: "repair insert"},
	}
	laid, found := card.Lay(c, own)
	b := laid.Card().Bolt("drain")
	if b.Thread != "M15x1.5" || b.Torque == nil || b.Torque.Value != 24 || b.Seal.Inner.Value != 15.2 || b.Seal.Outer.Known() || b.Size.Known() {
		t.Errorf("%s, %v", wire.Write(b), found)
	}
	slices.Reverse(own)
	again, _ := card.Lay(c, own)
	if !bytes.Equal(written(again), written(laid)) {
		t.Errorf("in another order:\n%s\n%s", written(again), written(laid))
	}
	for _, same := range []string{"M14x1.5", "m14 x 1,5", "M14"} {
		laid, _ := card.Lay(c, []card.Own{{What: "thread.drain", Value: same, Standing: card.Measured, Why: "gauge"}})
		if b := laid.Card().Bolt("drain"); !b.Torque.Known() || !b.Size.Known() {
			t.Errorf("%q is the thread that the card has, and takes its figures away", same)
		}
	}
}

// Another thread of the can makes the filter's own sizes unknown: another filter goes on it.
func TestLay_ThreadOfTheCan(t *testing.T) {
	laid, found := card.Lay(samples(t)["tessaly-corda-570"], []card.Own{{What: "thread.can", Value: "3/4-16 UNF", Standing: card.Decided, Why: "adapter"}})
	if f := &laid.Card().Filters[0]; f.Thread != "3/4-16 UNF" || f.Ring.Known() || f.Height.Known() || len(codesAt(found, "/0/value")) != 0 {
		t.Errorf("%s, %v", wire.Write(f), found)
	}
}

// A wrong figure is told at its place, in one finding, and the others lie over all the
// same.
func TestLay_Wrong(t *testing.T) {
	c := samples(t)["tessaly-corda-570"]
	good := card.Own{What: "volume.engine", Value: "2.2 L", Standing: card.Measured, Why: "jug"}
	for _, wrong := range []struct {
		own  card.Own
		code string
	}{
		{card.Own{What: "torque.drain", Value: "much", Standing: card.Decided}, "not-a-number"},
		{card.Own{What: "torque.drain", Value: "20", Standing: card.Decided}, "no-unit"},
		{card.Own{What: "torque.drain", Value: "2000 N·m", Standing: card.Decided}, "not-believable"},
		{card.Own{What: "torque.drain", Value: "-20 N·m", Standing: card.Decided}, "negative"},
		{card.Own{What: "torque.drain", Value: "20 L", Standing: card.Decided}, "unit-of-other-kind"},
		{card.Own{What: "torque.drain", Value: " ", Standing: card.Decided}, "told-nothing"},
		{card.Own{What: "torque.drain", Value: "20 N·m", Standing: card.FromManual}, "unknown-standing"},
		{card.Own{What: "torque.sidecar", Value: "20 N·m", Standing: card.Decided}, "own-elsewhere"},
		{card.Own{What: "inner.coolant", Value: "20 mm", Standing: card.Decided}, "own-elsewhere"},
		{card.Own{What: "number.sidecar", Value: "4", Standing: card.Decided}, "own-elsewhere"},
		{card.Own{What: "charm.drain", Value: "4", Standing: card.Decided}, "unknown-word"},
		{card.Own{What: "number.filter", Value: strings.Repeat("x", 61), Standing: card.Decided}, "text-too-long"},
		{card.Own{What: "grade.engine", Value: "MA2", Standing: card.Decided}, "unknown-grade"},
		{card.Own{What: "thread.drain", Value: "round", Standing: card.Decided}, "unknown-thread"},
	} {
		laid, found := card.Lay(c, []card.Own{wrong.own, good})
		if got := codesAt(found, "/0/value"); !slices.Equal(got, []string{wrong.code}) || finding.Refused(found) {
			t.Errorf("%s %q: found %v, want %s alone", wrong.own.What, wrong.own.Value, found, wrong.code)
		}
		alone, _ := card.Lay(c, []card.Own{good})
		if !bytes.Equal(written(laid), written(alone)) {
			t.Errorf("%s %q: it lies over, or the other doesn't", wrong.own.What, wrong.own.Value)
		}
	}
}

// What is odd about a figure is doubted at it; it lies over all the same.
func TestLay_Odd(t *testing.T) {
	c := samples(t)["tessaly-corda-570"]
	for what, value := range map[string]string{"torque.drain": "150 N·m", "volume.engine": "2.9 L", "grade.engine": "80W-90", "size.drain": "60 mm"} {
		laid, found := card.Lay(c, []card.Own{{What: what, Value: value, Standing: card.Decided, Why: "so"}})
		if bytes.Equal(written(laid), written(c)) || len(codesAt(found, "/0/value")) == 0 || finding.Refused(found) {
			t.Errorf("%s %s: found %v", what, value, found)
		}
	}
}

// Nothing over a card leaves it as it is; the same figures once more change nothing; and
// whatever is typed, a card comes back that can be planned.
func TestLay_Any(t *testing.T) {
	all := samples(t)
	names := slices.Sorted(maps.Keys(all))
	rapid.Check(t, func(t *rapid.T) {
		c := all[rapid.SampledFrom(names).Draw(t, "card")]
		if laid, found := card.Lay(c, nil); !bytes.Equal(written(laid), written(c)) || len(found) != 0 {
			t.Fatalf("nothing lies over: %v", found)
		}
		own := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) card.Own {
			word := rapid.SampledFrom(card.OwnFigures).Draw(t, "word")
			ids := append(parts(c.Card(), word), "sidecar")
			typed := []string{values[word], "17 mm", "20-24 N·m", "2", "2,4 L", "M12x1.25", "", "@method.typical", "10W-40/20W-50", "1 US qt"}
			return card.Own{What: string(word) + "." + rapid.SampledFrom(ids).Draw(t, "id"), Value: rapid.SampledFrom(typed).Draw(t, "value"),
				Standing: rapid.SampledFrom(append(slices.Clone(card.OwnStandings), "", card.Estimated)).Draw(t, "standing"),
				Why:      rapid.SampledFrom([]string{"", "@finding.none", "jug"}).Draw(t, "why")}
		}), 0, 6).Draw(t, "own")
		laid, found := card.Lay(c, own)
		if checked, refused := card.Accept(laid.Card()); checked == nil {
			t.Fatalf("%v is refused: %v", own, refused)
		}
		if finding.Refused(found) {
			t.Fatalf("%v refuses: %v", own, found)
		}
		again, _ := card.Lay(laid, own)
		if !bytes.Equal(written(again), written(laid)) {
			t.Fatalf("%v once more:\n%s\n%s", own, written(again), written(laid))
		}
	})
}

// Every figure that is offered lies over the card it is offered for, and where nothing is
// to be undone none is.
func TestOwnPlaces_LieOver(t *testing.T) {
	for name, c := range samples(t) {
		places := card.OwnPlaces(c.Card())
		if len(places) == 0 {
			t.Errorf("%s: nothing is offered", name)
		}
		for _, p := range places {
			word, id, _ := strings.Cut(p.What, ".")
			if b := c.Card().Bolt(id); b != nil && b.Purpose == card.LeaveAlone {
				t.Errorf("%s: %s is offered", name, p.What)
			}
			laid, _ := card.Lay(c, []card.Own{{What: p.What, Value: values[card.OwnFigure(word)], Standing: card.Measured, Why: "seen"}})
			if bytes.Equal(written(laid), written(c)) {
				t.Errorf("%s: %s doesn't lie over", name, p.What)
			}
		}
	}
}
