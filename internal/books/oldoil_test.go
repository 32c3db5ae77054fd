package books_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/books"
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// told is a fact of a book; about are What, Value and Text.
func told(of ledger.Book, subject string, seq int, kind ledger.FactKind, about ...string) ledger.Fact {
	f := ledger.Fact{Book: of, Of: subject, ID: subject + "-" + strconv.Itoa(seq), Kind: kind, Seq: seq,
		Time: "2026-11-30T12:00:00.000Z", Day: "2026-11-30"}
	for n, into := range []*string{&f.What, &f.Value, &f.Text} {
		if n < len(about) {
			*into = about[n]
		}
	}
	return f
}

func oilFact(can string, seq int, kind ledger.FactKind, about ...string) ledger.Fact {
	return told(ledger.OilBook, can, seq, kind, about...)
}

// drainedBy is what a job drained from its engine.
func drainedBy(job, can string, seq int, about ...string) ledger.Fact {
	f := oilFact(can, seq, "drained", about...)
	f.Job, f.Signs = job, map[string]string{"circuit": "engine"}
	return f
}

func oldOil(facts ...ledger.Fact) *books.OldOilAnswer {
	return books.OldOil(&books.OldOilInput{Input: ledger.Input{Facts: facts}, System: quantity.Metric, Today: "2026-11-30"})
}

// addingOil gives what is found about the last of the facts.
func addingOil(facts ...ledger.Fact) []finding.Finding {
	return books.OldOil(&books.OldOilInput{Input: ledger.Input{Facts: facts, Adding: true}, System: quantity.Metric, Today: "2026-11-30"}).Findings
}

func can(id, kind, size string) ledger.Fact { return oilFact(id, 1, "can", kind, size, "Can "+id) }

func codes(list []finding.Finding) string {
	var all []string
	for _, f := range list {
		all = append(all, f.Code+" "+string(f.Grade))
	}
	return strings.Join(all, ", ")
}

// A can holds what came in since it was handed in last, and says how full it is: nearly
// full from nine tenths of its size (common practice, no source).
func TestOldOil_Full(t *testing.T) {
	for _, c := range []struct {
		size    string
		volumes []string
		holds   string
		room    string
		state   string
	}{
		{"10 L", nil, "", "10 L", "can.empty"},
		{"10 L", []string{"2.4 L", "0.1 L"}, "2.5 L", "7.5 L", "can.room"},
		{"10 L", []string{"5 L", "3.99 L"}, "8.99 L", "1.01 L", "can.room"},
		{"10 L", []string{"5 L", "4 L"}, "9 L", "1 L", "can.nearly-full"},
		{"10 L", []string{"10 L"}, "10 L", "", "can.nearly-full"},
		{"10 L", []string{"5 L", "5200 mL"}, "10.2 L", "", "can.too-much"},
		{"", []string{"50 L"}, "50 L", "", "can.size-unknown"},
		{"", nil, "", "", "can.empty"},
		{"a big one", []string{"3"}, "3 L", "", "can.size-unknown"},
	} {
		facts := []ledger.Fact{can("a", "engine", c.size)}
		for n, v := range c.volumes {
			facts = append(facts, oilFact("a", n+2, "drained", "engine", v))
		}
		got := oldOil(facts...).Cans[0]
		if first(got.Holds) != c.holds || first(got.Room) != c.room || got.State != c.state {
			t.Errorf("%s with %q: holds %q, room for %q, %s; want %q, %q, %s", c.size, c.volumes, got.Holds, got.Room, got.State, c.holds, c.room, c.state)
		}
	}
}

func first(texts []string) string {
	if len(texts) == 0 {
		return ""
	}
	return texts[0]
}

// What was handed in leaves the can and stands in the table of its year, by kind.
func TestOldOil_Year(t *testing.T) {
	gear := oilFact("b", 3, "handed-in", "", "", "Other yard")
	gear.Day = "2025-12-31"
	a := oldOil(can("a", "engine", "20 L"), oilFact("a", 2, "drained", "engine", "3.2 L"), oilFact("a", 3, "handed-in", "", "2026-03-05", "Yard"),
		oilFact("a", 4, "drained", "engine", "2 L"), oilFact("a", 5, "drained", "engine", "1.1 L"), oilFact("a", 6, "handed-in", "", "2026-02-01", "Yard"),
		oilFact("a", 7, "drained", "engine", "0.7 L"),
		can("b", "gear", ""), oilFact("b", 2, "drained", "gear", "1 L"), gear)
	var got []string
	for _, y := range a.Years {
		for _, s := range y.Sums {
			got = append(got, strconv.Itoa(y.Year)+" "+s.Kind+" "+s.Volume[0])
		}
		for _, r := range y.Rows {
			got = append(got, r.Day+" "+r.Name+" "+r.Volume[0]+" "+r.Place)
		}
	}
	want := []string{"2026 waste.engine 6.3 L", "2026-02-01 Can a 3.1 L Yard", "2026-03-05 Can a 3.2 L Yard", "2025 waste.gear 1 L", "2025-12-31 Can b 1 L Other yard"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if a.Cans[0].Holds[0] != "0.7 L" || len(a.Findings) > 0 {
		t.Errorf("after it %q, found %s", a.Cans[0].Holds, codes(a.Findings))
	}
}

// What is new is refused where it can't be so; what a record holds is told, and counts.
func TestOldOil_Adding(t *testing.T) {
	engine, spoiled := can("a", "engine", "5 L"), can("s", "spoiled", "5 L")
	full := oilFact("a", 2, "drained", "engine", "4.8 L")
	again := drainedBy("j", "s", 2, "spoiled", "1 L")
	for _, c := range []struct {
		name  string
		facts []ledger.Fact
		want  string
	}{
		{"a can", []ledger.Fact{engine}, ""},
		{"a can without a name", []ledger.Fact{oilFact("a", 1, "can", "engine", "5 L", " ")}, "told-nothing refuse"},
		{"a can of nothing known", []ledger.Fact{oilFact("a", 1, "can", "soup", "5 L", "A")}, "unknown-word refuse"},
		{"a can of no size", []ledger.Fact{oilFact("a", 1, "can", "gear", "large", "A")}, "not-a-number refuse"},
		{"a can of a thimble", []ledger.Fact{oilFact("a", 1, "can", "gear", "2 mL", "A")}, "not-believable refuse"},
		{"into none", []ledger.Fact{oilFact("z", 1, "drained", "engine", "1 L")}, "can-unknown refuse"},
		{"nothing", []ledger.Fact{engine, oilFact("a", 2, "drained", "engine", "0")}, "not-believable refuse"},
		{"other oil", []ledger.Fact{engine, oilFact("a", 2, "drained", "spoiled", "1 L")}, "can-of-other-kind refuse"},
		{"engine oil to spoiled", []ledger.Fact{spoiled, oilFact("s", 2, "drained", "engine", "1 L")}, "can-of-other-kind refuse"},
		{"too much", []ledger.Fact{engine, full, oilFact("a", 3, "drained", "engine", "0.5 L")}, "can-too-small doubt"},
		{"a job twice", []ledger.Fact{engine, drainedBy("j", "a", 2, "engine", "1 L"), spoiled, again}, "drained-again refuse"},
		{"the kind of a full can", []ledger.Fact{engine, full, oilFact("a", 3, "can", "gear", "5 L", "A")}, "can-not-empty refuse"},
		{"its name", []ledger.Fact{engine, full, oilFact("a", 3, "can", "engine", "6 L", "A")}, ""},
		{"an empty can handed in", []ledger.Fact{engine, oilFact("a", 2, "handed-in", "", "", "Yard")}, "can-empty refuse"},
		{"handed in tomorrow", []ledger.Fact{engine, full, oilFact("a", 3, "handed-in", "", "2026-12-01", "Yard")}, "day-to-come refuse"},
		{"handed in on no day", []ledger.Fact{engine, full, oilFact("a", 3, "handed-in", "", "2026-02-30", "Yard")}, "bad-day refuse"},
		{"handed in nowhere", []ledger.Fact{engine, full, oilFact("a", 3, "handed-in")}, "told-nothing refuse"},
		{"away though full", []ledger.Fact{engine, full, oilFact("a", 3, "gone")}, "can-not-empty refuse"},
		{"away", []ledger.Fact{engine, oilFact("a", 2, "gone")}, ""},
		{"what nobody knows", []ledger.Fact{engine, oilFact("a", 2, "boiled")}, "unknown-event refuse"},
		{"of another book", []ledger.Fact{engine, told(ledger.ShelfBook, "a", 2, "item", "oil")}, "fact-of-other-book refuse"},
	} {
		if got := codes(addingOil(c.facts...)); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		if list := oldOil(c.facts...).Findings; finding.Refused(list) {
			t.Errorf("%s, in the record: %s", c.name, codes(list))
		}
	}
}

// Two phones put what one job drained into two cans: it counts once, and both say so.
// Oils that were poured together all the same are the worst of them.
func TestOldOil_Merged(t *testing.T) {
	a := oldOil(can("a", "engine", "5 L"), can("b", "engine", "5 L"), drainedBy("j", "a", 2, "engine", "1 L"), drainedBy("j", "b", 2, "engine", "1 L"))
	if first(a.Cans[0].Holds) != "1 L" || first(a.Cans[1].Holds) != "" || !a.Cans[1].Entries[0].Again || codes(a.Findings) != "drained-again doubt" {
		t.Errorf("%q and %q, found %s", a.Cans[0].Holds, a.Cans[1].Holds, codes(a.Findings))
	}
	a = oldOil(can("a", "engine", "5 L"), oilFact("a", 2, "drained", "engine", "1 L"), oilFact("a", 3, "drained", "spoiled", "1 L"), oilFact("a", 4, "handed-in", "", "", "Yard"))
	if got := a.Years[0].Sums; len(got) != 1 || got[0].Kind != "waste.spoiled" || got[0].Litres != 2 || codes(a.Findings) != "can-of-other-kind doubt" {
		t.Errorf("%v, found %s", got, codes(a.Findings))
	}
}

// What a job drained is proposed to a can of its kind: to the fullest that takes it
// whole, and with what doesn't fit where none does. It is proposed once.
func TestOldOil_Proposed(t *testing.T) {
	facts := []ledger.Fact{can("a", "engine", "5 L"), oilFact("a", 2, "drained", "engine", "3 L"), can("b", "engine", "20 L"), can("c", "engine", ""),
		can("d", "gear", "2 L"), drainedBy("done", "b", 2, "engine", "4 L")}
	job := func(id string, waste oil.Waste, out float64) books.DrainedJob {
		return books.DrainedJob{Job: id, Circuit: "engine", Role: "role.engine", Waste: waste, Out: out}
	}
	for _, c := range []struct {
		jobs []books.DrainedJob
		want string
	}{
		{[]books.DrainedJob{job("done", "engine", 4)}, ""},
		{[]books.DrainedJob{job("j", "engine", 0)}, ""},
		{[]books.DrainedJob{job("j", "engine", 1.9)}, "a"},
		{[]books.DrainedJob{job("j", "engine", 1.9), job("k", "engine", 1.9)}, "a b"},
		{[]books.DrainedJob{job("j", "engine", 30)}, "c"},
		{[]books.DrainedJob{job("j", "gear", 2.5)}, "d+0.5 L"},
		{[]books.DrainedJob{job("j", "spoiled", 1)}, "none"},
	} {
		var got []string
		for _, p := range books.OldOil(&books.OldOilInput{Input: ledger.Input{Facts: facts}, System: quantity.Metric, Jobs: c.jobs}).Proposed {
			text := p.Can
			if text == "" {
				text = "none"
			}
			if len(p.Over) > 0 {
				text += "+" + p.Over[0]
			}
			got = append(got, text)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%v: %q, want %q", c.jobs, got, c.want)
		}
	}
}

// A volume is read in the units of who typed it, whoever looks at it later.
func TestOldOil_Units(t *testing.T) {
	quarts := oilFact("a", 2, "drained", "engine", "2")
	quarts.Signs = map[string]string{"system": "us"}
	a := oldOil(can("a", "engine", "10 L"), quarts)
	if got := first(a.Cans[0].Holds); got != "1.89 L" { // 2 US qt of 57.75 in³ are 1.8927 L
		t.Errorf("2 qt are %q", got)
	}
}

// anyOil draws facts of a few cans, undos among them.
func anyOil(t *rapid.T) []ledger.Fact {
	var facts []ledger.Fact
	for n := range rapid.IntRange(0, 12).Draw(t, "facts") {
		id := rapid.SampledFrom([]string{"a", "b"}).Draw(t, "can")
		f := oilFact(id, rapid.IntRange(1, 6).Draw(t, "seq"), rapid.SampledFrom([]ledger.FactKind{"can", "drained", "drained", "handed-in", "gone", "undo"}).Draw(t, "kind"),
			rapid.SampledFrom([]string{"engine", "gear", "spoiled", "soup"}).Draw(t, "what"), rapid.SampledFrom([]string{"", "2.5 L", "2026-05-01", "7"}).Draw(t, "value"), "x")
		f.ID = "f" + strconv.Itoa(n)
		if f.Kind == ledger.Undo {
			f.What = "f" + strconv.Itoa(rapid.IntRange(0, 12).Draw(t, "undone"))
		}
		f.Job = rapid.SampledFrom([]string{"", "j"}).Draw(t, "job")
		facts = append(facts, f)
	}
	return facts
}

// The book follows from the set of its facts: in whatever order and however often they
// come. Nothing in it refuses, and what was drained is in a can or was handed in.
func TestOldOil_Set(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		facts := anyOil(t)
		a := oldOil(facts...)
		shuffled := rapid.Permutation(append(slices.Clone(facts), facts...)).Draw(t, "order")
		b := oldOil(shuffled...)
		if finding.Refused(a.Findings) {
			t.Fatalf("refused: %s", codes(a.Findings))
		}
		a.Findings, b.Findings = nil, nil
		if one, other := string(wire.Write(a)), string(wire.Write(b)); one != other {
			t.Fatalf("%s\nin another order\n%s", one, other)
		}
		in := 0
		for _, f := range ledger.Standing(facts) {
			if f.Kind == "drained" && slices.Contains([]string{"engine", "gear", "spoiled"}, f.What) || f.Kind == "drained" && f.What == "soup" {
				in += map[string]int{"2.5 L": 25, "7": 70}[f.Value]
			}
		}
		again, left := 0, 0
		for _, c := range a.Cans {
			left += tenths(first(c.Holds))
			for _, e := range c.Entries {
				if e.Again {
					again += tenths(e.Volume[0])
				}
			}
		}
		for _, y := range a.Years {
			for _, s := range y.Sums {
				left += tenths(s.Volume[0])
			}
		}
		if left+again != in {
			t.Fatalf("%d tenths of a litre came in, %d are accounted for, %d came twice", in, left, again)
		}
	})
}

// tenths counts a printed volume in tenths of a litre.
func tenths(text string) int {
	if text == "" {
		return 0
	}
	a, _ := quantity.Parse(quantity.Volume, text, "L", quantity.Metric)
	return int(a.Base*10 + 0.5)
}
