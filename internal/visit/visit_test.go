package visit_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/visit"
	"tidysump/internal/wire"
)

// line is a signature of one stroke.
const line = "100,100 400,120 700,300"

func fact(seq int, kind, what, value, text string, signs ...string) ledger.Fact {
	return ledger.Fact{Book: ledger.VisitBook, Of: "job", ID: fmt.Sprintf("f%02d", seq), Kind: ledger.FactKind(kind), Time: fmt.Sprintf("2026-11-30T09:%02d:00.000Z", seq), Day: "2026-11-30",
		Seq: seq, What: what, Value: value, Text: text, Signs: finding.Values(signs...)}
}

func of(t testing.TB, facts ...ledger.Fact) *visit.Visit {
	t.Helper()
	return with(t, visit.Case{}, facts...)
}

func with(t testing.TB, i visit.Case, facts ...ledger.Fact) *visit.Visit {
	t.Helper()
	i.Facts = facts
	return visit.Of(&i)
}

// adding gives the codes and places that refuse the last fact.
func adding(facts ...ledger.Fact) string {
	i := visit.Case{Input: ledger.Input{Facts: facts, Adding: true}}
	for _, f := range visit.Of(&i).Findings {
		if f.Grade == finding.Refuse {
			return f.Code + " " + strings.TrimPrefix(f.Where, fmt.Sprintf("/facts/%d", len(facts)-1))
		}
	}
	return ""
}

func agreed(seq int) []ledger.Fact {
	return []ledger.Fact{
		fact(seq, "said", "agreed", "", "Oil and filter, chain tension."),
		fact(seq+1, "said", "most", "120,00", "", "currency", "EUR"),
		fact(seq+2, "said", "promised", "2026-11-30T17:00", ""),
	}
}

// What is typed at arrival is read, and refused with a sentence where it can't be.
func TestOf_Said(t *testing.T) {
	for _, c := range []struct{ what, value, text, currency, refused, reads string }{
		{"wish", "", "Oil, and it rattles when cold.", "", "", "Oil, and it rattles when cold."},
		{"odometer", "34 210", "", "", "", "34210 km"},
		{"odometer", "21,260 mi", "", "", "", "34210 km"},
		{"odometer", "-5", "", "", "negative /value", ""},
		{"odometer", "40000000", "", "", "not-believable /value", ""},
		{"odometer", "far", "", "", "not-a-number /value", ""},
		{"fuel", "half", "", "", "", "@visit.fuel.half"},
		{"fuel", "some", "", "", "unknown-word /value", ""},
		{"keys", "one, with a red tag", "", "", "", "one, with a red tag"},
		{"keys", strings.Repeat("x", visit.ShortLetters+1), "", "", "text-too-long /value", ""},
		{"agreed", "", strings.Repeat("x", visit.LongLetters+1), "", "text-too-long /text", ""},
		{"most", "120,00", "", "EUR", "", "12000 EUR"},
		{"most", "1.500", "", "KWD", "number-two-ways /value", ""},
		{"most", "12000", "", "JPY", "", "12000 JPY"},
		{"most", "a lot", "", "EUR", "no-plain-number /value", ""},
		{"most", "120", "", "", "unknown-currency /signs/currency", ""},
		{"promised", "2026-11-30T17:00", "", "", "", "2026-11-30T17:00"},
		{"promised", "2026-11-31T17:00", "", "", "bad-moment /value", ""},
		{"promised", "tomorrow", "", "", "bad-moment /value", ""},
		{"colour", "red", "", "", "unknown-word /what", ""},
	} {
		var signs []string
		if c.currency != "" {
			signs = []string{"currency", c.currency}
		}
		f := fact(1, "said", c.what, c.value, c.text, signs...)
		if got := adding(f); got != c.refused {
			t.Errorf("%s %q: refused %q, want %q", c.what, c.value, got, c.refused)
		}
		v := of(t, f) // what stands already refuses nothing
		if c.refused != "" && c.refused != "text-too-long /value" && c.refused != "text-too-long /text" {
			if len(v.Said) != 0 || len(v.Findings) != 1 || v.Findings[0].Grade != finding.Doubt {
				t.Errorf("%s %q: %+v, findings %+v", c.what, c.value, v.Said, v.Findings)
			}
			continue
		}
		if len(v.Said) != 1 || c.refused == "" && shown(&v.Said[0]) != c.reads {
			t.Errorf("%s %q: read as %+v, want %q", c.what, c.value, v.Said, c.reads)
		}
	}
}

func shown(s *visit.Said) string {
	switch {
	case s.Money != nil:
		return fmt.Sprint(s.Money.Minor, " ", s.Money.Currency)
	case len(s.Texts) > 0:
		return s.Texts[0]
	}
	return s.Value
}

// A bare number is in the unit of whoever typed it, on every phone.
func TestOf_OdometerOfWhoTyped(t *testing.T) {
	v := with(t, visit.Case{System: "us"}, fact(1, "said", "odometer", "34210", "", "system", "metric"))
	if got := shown(&v.Said[0]); got != "21260 mi" {
		t.Errorf("34210 typed in km is %s", got)
	}
}

// The last holds, an empty one takes away, and an undo brings back.
func TestOf_LastHolds(t *testing.T) {
	one, other, none := fact(1, "said", "keys", "one", ""), fact(2, "said", "keys", "two", ""), fact(3, "said", "keys", "", "")
	undo := func(seq int, what string) ledger.Fact { return fact(seq, "undo", what, "", "") }
	for _, c := range []struct {
		facts []ledger.Fact
		want  string
	}{
		{[]ledger.Fact{one, other}, "two"},
		{[]ledger.Fact{other, one}, "two"},
		{[]ledger.Fact{one, other, none}, ""},
		{[]ledger.Fact{one, other, none, undo(4, "f03")}, "two"},
		{[]ledger.Fact{one, other, undo(4, "f02")}, "one"},
		{[]ledger.Fact{one, other, undo(4, "f02"), undo(5, "f04")}, "two"},
	} {
		got := ""
		for _, s := range of(t, c.facts...).Said {
			got = s.Value
		}
		if got != c.want {
			t.Errorf("%d facts: %q, want %q", len(c.facts), got, c.want)
		}
	}
}

// Trouble waits until the customer has decided, and what was agreed to may cost more.
func TestOf_Troubles(t *testing.T) {
	leak := fact(5, "trouble", "", "45", "Fork seal leaks.", "currency", "EUR")
	yes := func(seq int, value string) ledger.Fact { return fact(seq, "answer", "f05", value, "", "how", "phone") }
	for _, c := range []struct {
		name       string
		facts      []ledger.Fact
		unanswered int
		limit      int // 0: not known
		stage      visit.Progress
	}{
		{"not asked", []ledger.Fact{leak}, 1, 12000, visit.Asking},
		{"not reached", []ledger.Fact{leak, yes(6, "not-reached")}, 1, 12000, visit.Asking},
		{"yes", []ledger.Fact{leak, yes(6, "not-reached"), yes(7, "yes")}, 0, 16500, visit.Agreed},
		{"handed over unanswered", []ledger.Fact{leak, fact(6, "handed", "", "", "")}, 0, 12000, visit.Gone},
		{"no", []ledger.Fact{leak, yes(6, "no")}, 0, 12000, visit.Agreed},
		{"no, later yes", []ledger.Fact{leak, yes(6, "no"), yes(7, "yes")}, 0, 16500, visit.Agreed},
		{"yes taken back", []ledger.Fact{leak, yes(6, "yes"), fact(7, "undo", "f06", "", "")}, 1, 12000, visit.Asking},
		{"trouble taken back", []ledger.Fact{leak, yes(6, "yes"), fact(7, "undo", "f05", "", "")}, 0, 12000, visit.Agreed},
		{"yes without a price", []ledger.Fact{fact(5, "trouble", "", "", "Brake hose is cracked."), yes(6, "yes")}, 0, 0, visit.Agreed},
		{"in another currency", []ledger.Fact{fact(5, "trouble", "", "45", "Seal.", "currency", "CHF"), yes(6, "yes")}, 0, 0, visit.Agreed},
	} {
		v := of(t, append(agreed(1), c.facts...)...)
		limit := 0
		if v.Limit != nil {
			limit = v.Limit.Minor
		}
		if len(v.Unanswered) != c.unanswered || limit != c.limit || v.Stage != c.stage || len(v.Findings) != 0 {
			t.Errorf("%s: %d unanswered, may cost %d, %s; findings %+v", c.name, len(v.Unanswered), limit, v.Stage, v.Findings)
		}
	}
	for _, c := range []struct {
		fact    ledger.Fact
		refused string
	}{
		{fact(6, "trouble", "", "", ""), "told-nothing /text"},
		{fact(6, "trouble", "", "dear", "Seal", "currency", "EUR"), "no-plain-number /value"},
		{fact(6, "answer", "f05", "perhaps", ""), "unknown-word /value"},
		{fact(6, "answer", "f01", "yes", ""), "trouble-unknown /what"},
		{fact(6, "answer", "f05", "yes", "", "how", "pigeon"), "unknown-word /signs/how"},
		{fact(6, "answer", "f05", "yes", "", "when", "noon"), "bad-moment /signs/when"},
		{fact(6, "answer", "f05", "yes", "", "when", "2026-11-30T12:00"), ""},
		{fact(6, "found", "damaged", "", ""), "told-nothing /text"},
		{fact(6, "found", "damaged", "", "", "photo", "yes"), ""},
		{fact(6, "found", "stolen", "", "The horn."), "unknown-word /what"},
		{fact(6, "sold", "", "", ""), "unknown-event /kind"},
		{fact(6, "handed", "", "", ""), ""},
	} {
		if got := adding(append(agreed(1), leak, c.fact)...); got != c.refused {
			t.Errorf("%s %s %q: refused %q, want %q", c.fact.Kind, c.fact.What, c.fact.Value, got, c.refused)
		}
	}
}

// More than may be is told, of an estimate as of a bill.
func TestOf_Over(t *testing.T) {
	for _, c := range []struct {
		total    int
		currency string
		over     int
	}{
		{12000, "EUR", 0}, {12001, "EUR", 1}, {90000, "JPY", 0}, {90000, "", 0},
	} {
		v := with(t, visit.Case{Total: c.total, Currency: c.currency}, agreed(1)...)
		over := 0
		if v.Over != nil {
			over = v.Over.Minor
		}
		if over != c.over || (v.Costs != nil) != (c.currency != "") {
			t.Errorf("%d %s: %d too much, want %d; costs %+v", c.total, c.currency, over, c.over, v.Costs)
		}
	}
}

// A signature is for what stands, and says later what has changed since.
func TestOf_Signed(t *testing.T) {
	facts := agreed(1)
	text := of(t, facts...).Agreement
	sign := func(seq int, moment, points, text string) ledger.Fact {
		return fact(seq, "signed", moment, points, text, "name", "A. Rider")
	}
	for _, c := range []struct {
		fact    ledger.Fact
		refused string
	}{
		{sign(4, "arrival", line, text), ""},
		{sign(4, "arrival", line, strings.Replace(text, "120", "90", 1)), "agreed-otherwise /text"},
		{sign(4, "noon", line, text), "unknown-word /what"},
		{sign(4, "arrival", "", text), "signature-none /value"},
		{sign(4, "arrival", "10,10", text), "signature-none /value"},
		{sign(4, "arrival", "10,10 11,11;20,20 21,21", text), "signature-none /value"},
		{sign(4, "arrival", "10,10 11,1001", text), "signature-unreadable /value"},
		{sign(4, "arrival", "10,10 -1,10", text), "signature-unreadable /value"},
		{sign(4, "arrival", "<svg>", text), "signature-unreadable /value"},
		{sign(4, "arrival", strings.Repeat(line+" ", 1000), text), "signature-too-long /value"},
	} {
		if got := adding(append(agreed(1), c.fact)...); got != c.refused {
			t.Errorf("%.20s %.20s: refused %q, want %q", c.fact.What, c.fact.Value, got, c.refused)
		}
	}
	if got := adding(fact(1, "said", "keys", "one", ""), sign(2, "arrival", line, "")); got != "nothing-agreed /text" {
		t.Errorf("nothing agreed: refused %q", got)
	}
	facts = append(facts, sign(4, "arrival", line, text))
	v := of(t, facts...)
	if len(v.Signatures) != 1 || v.Signatures[0].Path != "M100 100L400 120L700 300" || v.Signatures[0].Name != "A. Rider" || len(v.Signatures[0].Changed) != 0 || v.Signatures[0].Agreement.Most.Minor != 12000 {
		t.Fatalf("signatures: %+v", v.Signatures)
	}
	facts = append(facts, fact(5, "said", "most", "150", "", "currency", "EUR"), fact(6, "said", "agreed", "", "Oil alone."), fact(7, "said", "promised", "", ""))
	v = of(t, facts...)
	if got := strings.Join(v.Signatures[0].Changed, " "); got != "visit.changed.agreed visit.changed.most visit.changed.promised" || v.Signatures[0].Agreement.Most.Minor != 12000 {
		t.Errorf("changed since: %s; signed for %+v", got, v.Signatures[0].Agreement)
	}
	// Signed at handing over, and then something more was agreed to.
	facts = append(facts, sign(8, "handover", line, v.Agreement), fact(9, "trouble", "", "5", "Bulb.", "currency", "EUR"), fact(10, "answer", "f09", "yes", ""))
	v = of(t, facts...)
	if got := v.Signatures[1].Changed; len(v.Signatures) != 2 || len(got) != 1 || got[0] != "visit.changed.yes" {
		t.Errorf("changed since handing over: %v", got)
	}
}

// What a signature keeps stays readable, whatever was written.
func TestOf_AgreementIsReadable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work := strings.ToValidUTF8(rapid.StringN(1, 200, visit.LongLetters).Draw(t, "work"), "")
		if work == "" {
			work = "x"
		}
		facts := []ledger.Fact{fact(1, "said", "agreed", "", work)}
		facts = append(facts, fact(2, "signed", "arrival", line, visitOf(t, facts).Agreement))
		s := visitOf(t, facts).Signatures
		if len(s) != 1 || !s[0].Known || s[0].Agreement.Work != work || len(s[0].Changed) > 0 {
			t.Fatalf("%q is kept as %+v", work, s)
		}
	})
}

func visitOf(t *rapid.T, facts []ledger.Fact) *visit.Visit {
	t.Helper()
	return visit.Of(&visit.Case{Input: ledger.Input{Facts: facts}})
}

// drawn are facts as several phones may have written them, good and bad ones.
func drawn(t *rapid.T) []ledger.Fact {
	kinds := rapid.SampledFrom([]string{"said", "found", "trouble", "answer", "signed", "handed", "undo", "odd"})
	words := rapid.SampledFrom([]string{"wish", "agreed", "most", "promised", "damaged", "arrival", "handover", "f01", "f02", "f03", "f05", "f08", ""})
	values := rapid.SampledFrom([]string{"", "12", "yes", "no", "not-reached", line, "2026-11-30T17:00", "x"})
	var facts []ledger.Fact
	for n := range rapid.IntRange(0, 12).Draw(t, "facts") {
		f := fact(n, kinds.Draw(t, "kind"), words.Draw(t, "what"), values.Draw(t, "value"), rapid.SampledFrom([]string{"", "a", "b"}).Draw(t, "text"), "currency", "EUR")
		f.Seq = rapid.IntRange(-1, 6).Draw(t, "seq")
		facts = append(facts, f)
	}
	return facts
}

// However two phones' facts come together, the visit is the same, and nothing that
// stands already is refused.
func TestOf_Merge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		facts := drawn(t)
		one := wire.Write(visitWithout(t, facts))
		again := append([]ledger.Fact(nil), facts...)
		again = append(again, facts[:len(facts)/2]...)
		seed := rapid.Uint64().Draw(t, "seed")
		rand.New(rand.NewPCG(seed, 1)).Shuffle(len(again), func(i, k int) { again[i], again[k] = again[k], again[i] })
		if other := wire.Write(visitWithout(t, again)); string(one) != string(other) {
			t.Fatalf("%s\nand in another order\n%s", one, other)
		}
	})
}

// visitWithout is a visit without its findings, which name places in the list.
func visitWithout(t *rapid.T, facts []ledger.Fact) *visit.Visit {
	v := visitOf(t, facts)
	for _, f := range v.Findings {
		if f.Grade == finding.Refuse {
			t.Fatalf("what stands is refused: %+v", f)
		}
	}
	v.Findings = nil
	return v
}

// What is undone is as if it had never been told, and comes back as it was.
func TestOf_Undo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		facts := drawn(t)
		for n := range facts {
			if facts[n].Kind == "undo" || facts[n].Kind == "odd" {
				facts[n].Kind = "handed"
			}
		}
		if len(facts) == 0 {
			return
		}
		n := rapid.IntRange(0, len(facts)-1).Draw(t, "undone")
		without := append(append([]ledger.Fact(nil), facts[:n]...), facts[n+1:]...)
		undo := fact(40, "undo", facts[n].ID, "", "")
		undone := append(append([]ledger.Fact(nil), facts...), undo)
		if got, want := wire.Write(visitWithout(t, undone)), wire.Write(visitWithout(t, without)); string(got) != string(want) {
			t.Fatalf("undone\n%s\nnever told\n%s", got, want)
		}
		back := append(undone, fact(41, "undo", undo.ID, "", ""))
		if got, want := wire.Write(visitWithout(t, back)), wire.Write(visitWithout(t, facts)); string(got) != string(want) {
			t.Fatalf("brought back\n%s\nas it was\n%s", got, want)
		}
	})
}
