package books_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/books"
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// item is a thing on the shelf; signs are names and texts in turn.
func item(id, what, much string, signs ...string) ledger.Fact {
	f := told(ledger.ShelfBook, id, 1, "item", what, much, "Thing "+id)
	f.Signs = map[string]string{}
	for n := 0; n < len(signs); n += 2 {
		f.Signs[signs[n]] = signs[n+1]
	}
	return f
}

func shelfFact(id string, seq int, kind ledger.FactKind, about ...string) ledger.Fact {
	return told(ledger.ShelfBook, id, seq, kind, about...)
}

func usedBy(job, line, id string, seq int, much string) ledger.Fact {
	f := shelfFact(id, seq, "used", line, much)
	f.Job = job
	return f
}

func shelved(wants []books.Want, facts ...ledger.Fact) *books.ShelfAnswer {
	return books.Shelve(&books.ShelfInput{Input: ledger.Input{Facts: facts}, System: quantity.Metric, Today: "2026-11-30"}, wants)
}

// planOf plans a sample bike whose filter has a number, in a garage: 2.5 L of 10W-40 with
// JASO MA2 and API SL, a filter, a washer of 14.2 × 18 × 1.5 mm.
func planOf(t *testing.T) *plan.Plan {
	t.Helper()
	c := plantest.Sample(t, "tessaly-corda-570")
	c.Filters[0].OwnNumber = "AB 12-34"
	checked, list := card.Accept(c)
	if checked == nil {
		t.Fatalf("the card is refused: %s", codes(list))
	}
	p, list := plan.Make(checked, plan.Bench{})
	if p == nil {
		t.Fatalf("no plan: %s", codes(list))
	}
	return p
}

// What is on the shelf is what was counted last, with what came and went since.
func TestShelve_Left(t *testing.T) {
	for _, c := range []struct {
		facts  []ledger.Fact
		left   string
		opened string
		found  string
	}{
		{[]ledger.Fact{item("a", "oil", "4 L", "size", "1 L")}, "4 L", "", ""},
		{[]ledger.Fact{item("a", "oil", "4 L", "size", "1 L"), usedBy("j", "x", "a", 2, "2.5 L")}, "1.5 L", "2026-11-30", ""},
		{[]ledger.Fact{item("a", "oil", "4 L", "size", "1 L"), usedBy("j", "x", "a", 2, "2 L")}, "2 L", "", ""},
		{[]ledger.Fact{item("a", "oil", "4 L"), shelfFact("a", 2, "opened", "", "2026-10-01"), usedBy("j", "x", "a", 3, "2 L")}, "2 L", "2026-10-01", ""},
		{[]ledger.Fact{item("a", "oil", "1 L"), shelfFact("a", 2, "added", "", "0.5 L")}, "1.5 L", "", ""},
		{[]ledger.Fact{item("a", "oil", "")}, "", "", ""},
		{[]ledger.Fact{item("a", "oil", ""), usedBy("j", "x", "a", 2, "1 L")}, "", "", ""},
		{[]ledger.Fact{item("a", "oil", "1 L"), usedBy("j", "x", "a", 2, "2 L"), shelfFact("a", 3, "added", "", "1 L")}, "1 L", "", "shelf-had-less doubt"},
		{[]ledger.Fact{item("a", "washer", "10"), usedBy("j", "x", "a", 2, "1"), usedBy("j", "x", "a", 3, "1"), usedBy("k", "x", "a", 4, "2")}, "7", "", "used-again doubt"},
		{[]ledger.Fact{item("a", "filter", "3"), usedBy("", "", "a", 2, "1"), usedBy("", "", "a", 3, "1")}, "1", "", ""},
		{[]ledger.Fact{item("a", "other", "many")}, "", "", "not-a-number doubt"},
		{[]ledger.Fact{item("a", "ring", "2.5")}, "", "", "bad-count doubt"},
	} {
		a := shelved(nil, c.facts...)
		if i := &a.Items[0]; first(i.Left) != c.left || i.Opened != c.opened || codes(a.Findings) != c.found {
			t.Errorf("%v: %q left, opened %q, %s; want %q, %q, %s", c.facts, i.Left, i.Opened, codes(a.Findings), c.left, c.opened, c.found)
		}
	}
}

// lines says of each line of a list its state, what is taken, and what else may do.
func lines(l books.WantedList) []string {
	var list []string
	for _, line := range l.Lines {
		text := strings.TrimPrefix(line.State, "shelf-line.")
		for _, p := range line.Picks {
			text += " " + p.Item + ":" + p.Takes[0]
		}
		for _, p := range line.Others {
			text += " (" + p.Item + ")"
		}
		if len(line.Lacking) > 0 {
			text += " -" + line.Lacking[0]
		}
		list = append(list, text)
	}
	return list
}

// Of the shelf is proposed what suits for certain: an oil by the rules of internal/oil, a
// filter by its number, a washer by its kind and all sizes that the card has. What isn't
// known never suits.
func TestShelve_Proposed(t *testing.T) {
	p := planOf(t)
	good := []string{"grade", "10W-40", "marks", "JASO MA2 API SL", "size", "1 L"}
	washer := []string{"seal", "flat-aluminium", "size", "14.2x18x1.5"}
	for _, c := range []struct {
		name   string
		facts  []ledger.Fact
		oil    string
		filter string
		washer string
	}{
		{"an empty shelf", nil, "short -2.5 L", "short -1", "short -1"},
		{"all of it", []ledger.Fact{item("o", "oil", "4 L", good...), item("f", "filter", "2", "number", "ab12 34"), item("w", "washer", "10", washer...)},
			"enough o:2.5 L", "enough f:1", "enough w:1"},
		{"too little", []ledger.Fact{item("o", "oil", "2 L", good...)}, "short o:2 L -0.5 L", "short -1", "short -1"},
		{"an opened one first", []ledger.Fact{item("o", "oil", "4 L", good...), item("q", "oil", "1.2 L", good...)}, "enough q:0.2 L o:3 L -", "", ""},
		{"no mark read", []ledger.Fact{item("o", "oil", "4 L", "grade", "10W-40")}, "unknown (o) -2.5 L", "", ""},
		{"no grade read", []ledger.Fact{item("o", "oil", "4 L", "marks", "MA2")}, "unknown (o) -2.5 L", "", ""},
		{"nothing but MB", []ledger.Fact{item("o", "oil", "4 L", "grade", "10W-40", "marks", "JASO MB")}, "short -2.5 L", "", ""},
		{"a step thicker", []ledger.Fact{item("o", "oil", "4 L", "grade", "10W-50", "marks", "JASO MA2 API SL")}, "unknown (o) -2.5 L", "", ""},
		{"a filter of another number", []ledger.Fact{item("f", "filter", "2", "number", "ab12 35")}, "", "unknown (f) -1", ""},
		{"a filter of none", []ledger.Fact{item("f", "filter", "2")}, "", "unknown (f) -1", ""},
		{"a washer of copper", []ledger.Fact{item("w", "washer", "9", "seal", "flat-copper", "size", "14.2x18x1.5")}, "", "", "short -1"},
		{"one of another size", []ledger.Fact{item("w", "washer", "9", "seal", "flat-aluminium", "size", "14.2x20x1.5")}, "", "", "short -1"},
		{"one without its thickness", []ledger.Fact{item("w", "washer", "9", "seal", "flat-aluminium", "size", "14.2 × 18 mm")}, "", "", "unknown (w) -1"},
		{"one of no size", []ledger.Fact{item("w", "washer", "9", "seal", "flat-aluminium")}, "", "", "unknown (w) -1"},
		{"one of no kind", []ledger.Fact{item("w", "washer", "9", "size", "14.2x18x1.5")}, "", "", "unknown (w) -1"},
		{"gone", []ledger.Fact{item("w", "washer", "9", washer...), shelfFact("w", 2, "gone")}, "", "", "short -1"},
		{"how many isn't known", []ledger.Fact{item("w", "washer", "", washer...)}, "", "", "unknown (w) -1"},
	} {
		got := lines(shelved([]books.Want{{ID: "j", Plan: p}}, c.facts...).Lists[0])
		for n, want := range []string{c.oil, c.filter, c.washer} {
			if want, some := strings.CutSuffix(want, " -"); some {
				if !strings.HasPrefix(got[n], "enough ") {
					t.Errorf("%s: %q, want %q", c.name, got[n], want)
				}
			} else if want != "" && got[n] != want {
				t.Errorf("%s: %q, want %q", c.name, got[n], want)
			}
		}
	}
}

// What was poured counts, and not what was due; what the book has of a job is not
// proposed again; what one job takes isn't there for the next, and is missing once for all.
func TestShelve_Lists(t *testing.T) {
	p := planOf(t)
	facts := []ledger.Fact{item("o", "oil", "4 L", "grade", "10W-40", "marks", "MA2, SL", "size", "1 L"), item("w", "washer", "1", "seal", "flat-aluminium", "size", "14.2x18x1.5"),
		item("f", "filter", "9", "number", "AB1234")}
	a := shelved([]books.Want{{ID: "j", Plan: p, Poured: map[string]float64{"engine": 2.1}}, {ID: "k", Plan: p}, {ID: "l", Plan: p}, {ID: "m"}}, facts...)
	for n, want := range [][]string{
		{"enough o:2.1 L", "enough f:1", "enough w:1"},
		{"short o:1.9 L -0.6 L", "enough f:1", "short -1"},
		{"short -2.5 L", "enough f:1", "short -1"},
		nil,
	} {
		if got := lines(a.Lists[n]); !slices.Equal(got, want) {
			t.Errorf("list %d: %q, want %q", n, got, want)
		}
	}
	var missing []string
	for _, m := range a.Missing {
		missing = append(missing, m.Lacking[0]+" for "+strings.Join(m.For, " "))
	}
	if want := []string{"3.1 L for k l", "2 for k l"}; !slices.Equal(missing, want) {
		t.Errorf("missing %q, want %q", missing, want)
	}
	line := a.Lists[0].Lines[0].Key
	again := shelved([]books.Want{{ID: "j", Plan: p}}, append(facts, usedBy("j", line, "o", 2, "2.1 L"))...)
	if got := lines(again.Lists[0])[0]; got != "done" || first(again.Items[0].Left) != "1.9 L" {
		t.Errorf("once it is in the book: %q, %q left", got, again.Items[0].Left)
	}
}

// What is new is refused where it can't be so.
func TestShelve_Adding(t *testing.T) {
	nameless := item("a", "oil", "1 L")
	nameless.Text = ""
	washers := item("a", "washer", "10")
	for _, c := range []struct {
		name  string
		facts []ledger.Fact
		want  string
	}{
		{"an oil", []ledger.Fact{item("a", "oil", "1 L", "grade", "SAE 10W-40", "marks", "none", "size", "1 L")}, ""},
		{"without a name", []ledger.Fact{nameless}, "told-nothing refuse"},
		{"of no grade known", []ledger.Fact{item("a", "oil", "1 L", "grade", "thick")}, "unknown-grade refuse"},
		{"of two grades", []ledger.Fact{item("a", "oil", "1 L", "grade", "10W-40 5W-30")}, "unknown-grade refuse"},
		{"of no mark known", []ledger.Fact{item("a", "oil", "1 L", "marks", "XYZ")}, "unknown-mark refuse"},
		{"nothing known of it", []ledger.Fact{item("a", "soup", "1")}, "unknown-word refuse"},
		{"a washer in words", []ledger.Fact{item("a", "washer", "1", "size", "large")}, "size-unread refuse"},
		{"a washer of one figure", []ledger.Fact{item("a", "washer", "1", "size", "14 mm")}, "size-unread refuse"},
		{"a washer", []ledger.Fact{item("a", "washer", "1", "seal", "folded", "size", "14,2 * 20 mm")}, ""},
		{"of no kind", []ledger.Fact{item("a", "washer", "1", "seal", "gold")}, "unknown-word refuse"},
		{"half a washer", []ledger.Fact{item("a", "washer", "0.5")}, "bad-count refuse"},
		{"from nothing", []ledger.Fact{shelfFact("z", 1, "added", "", "1")}, "item-unknown refuse"},
		{"more than there is", []ledger.Fact{washers, usedBy("j", "x", "a", 2, "12")}, "shelf-had-less doubt"},
		{"twice", []ledger.Fact{washers, usedBy("j", "x", "a", 2, "1"), usedBy("j", "x", "a", 3, "1")}, "used-again refuse"},
		{"opened tomorrow", []ledger.Fact{item("a", "oil", "1 L"), shelfFact("a", 2, "opened", "", "2026-12-01")}, "day-to-come refuse"},
		{"boiled", []ledger.Fact{washers, shelfFact("a", 2, "boiled")}, "unknown-event refuse"},
	} {
		i := &books.ShelfInput{Input: ledger.Input{Facts: c.facts, Adding: true}, System: quantity.Metric, Today: "2026-11-30"}
		if got := codes(books.Shelve(i, nil).Findings); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		if list := shelved(nil, c.facts...).Findings; finding.Refused(list) {
			t.Errorf("%s, in the record: %s", c.name, codes(list))
		}
	}
}

// The book follows from the set of its facts, and refuses none of it. No list takes more
// than is there, and what it takes and lacks is what it needs.
func TestShelve_Set(t *testing.T) {
	p := planOf(t)
	rapid.Check(t, func(t *rapid.T) {
		var facts []ledger.Fact
		for n := range rapid.IntRange(0, 12).Draw(t, "facts") {
			id := rapid.SampledFrom([]string{"a", "b", "c"}).Draw(t, "thing")
			f := item(id, rapid.SampledFrom([]string{"oil", "oil", "washer", "filter", "soup"}).Draw(t, "what"), rapid.SampledFrom([]string{"", "1.5 L", "3", "x"}).Draw(t, "much"),
				"grade", rapid.SampledFrom([]string{"", "10W-40", "thick"}).Draw(t, "grade"), "marks", "MA2, SL", "size", rapid.SampledFrom([]string{"", "1 L", "14.2x18x1.5"}).Draw(t, "size"),
				"seal", "flat-aluminium", "number", "AB1234")
			f.Kind = rapid.SampledFrom([]ledger.FactKind{"item", "item", "added", "used", "opened", "gone", "undo"}).Draw(t, "kind")
			f.Seq, f.ID, f.Job = rapid.IntRange(1, 6).Draw(t, "seq"), "f"+strconv.Itoa(n), rapid.SampledFrom([]string{"", "j"}).Draw(t, "job")
			if f.Kind == ledger.Undo {
				f.What = "f" + strconv.Itoa(rapid.IntRange(0, 12).Draw(t, "undone"))
			}
			facts = append(facts, f)
		}
		wants := []books.Want{{ID: "k", Plan: p}, {ID: "l", Plan: p}}
		a, b := shelved(wants, facts...), shelved(wants, rapid.Permutation(append(slices.Clone(facts), facts...)).Draw(t, "order")...)
		if finding.Refused(a.Findings) {
			t.Fatalf("refused: %s", codes(a.Findings))
		}
		a.Findings, b.Findings = nil, nil
		if one, other := string(wire.Write(a)), string(wire.Write(b)); one != other {
			t.Fatalf("%s\nin another order\n%s", one, other)
		}
		left := map[string]int{}
		for _, i := range a.Items {
			left[i.ID] = tenths(first(i.Left))
		}
		for _, l := range a.Lists {
			for _, line := range l.Lines {
				taken := 0
				for _, p := range line.Picks {
					taken += tenths(p.Takes[0])
					if left[p.Item] -= tenths(p.Takes[0]); left[p.Item] < 0 {
						t.Fatalf("%s of %s is more than there is", p.Takes[0], p.Item)
					}
				}
				if need := tenths(first(line.Needs)); taken+tenths(first(line.Lacking)) < need || taken > need+1 {
					t.Fatalf("%q: takes %d tenths and lacks %q", line.Needs, taken, line.Lacking)
				}
			}
		}
	})
}

// Every kind of seal that a card may have lies on a shelf as one kind of goods, but for
// gaskets, which are cut for their place.
func TestSealsOf(t *testing.T) {
	washers, rings := books.SealsOf(books.WasherGoods), books.SealsOf(books.RingGoods)
	for _, kind := range card.SealKinds {
		if in := slices.Contains(washers, kind) != slices.Contains(rings, kind); in == (kind == card.Paper) {
			t.Errorf("%s: washers %v, rings %v", kind, washers, rings)
		}
	}
	if len(rings) != 2 {
		t.Errorf("rings %v", rings)
	}
}
