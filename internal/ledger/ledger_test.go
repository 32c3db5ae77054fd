package ledger_test

import (
	"encoding/json"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/wire"
)

const noon = "2026-11-30T12:00:00.000Z"

func fact(id string, seq int, kind ledger.FactKind, what, value string) ledger.Fact {
	return ledger.Fact{Book: ledger.BikeBook, Of: "b", ID: id, Kind: kind, Time: noon, Seq: seq, What: what, Value: value}
}

func ids(list []*ledger.Fact) []string {
	all := []string{}
	for _, f := range list {
		all = append(all, f.ID)
	}
	return all
}

func texts(list []*ledger.Fact) []string {
	all := []string{}
	for _, f := range list {
		all = append(all, string(wire.Write(f)))
	}
	return all
}

// What stands follows from undos as it does in a job: one holds unless it is undone.
func TestStanding_Undo(t *testing.T) {
	a, b := fact("a", 1, "told", "called", "x"), fact("b", 2, "told", "called", "y")
	for _, c := range []struct {
		name  string
		facts []ledger.Fact
		want  []string
	}{
		{"none", []ledger.Fact{a, b}, []string{"a", "b"}},
		{"undone", []ledger.Fact{a, b, fact("u", 3, ledger.Undo, "b", "")}, []string{"a"}},
		{"before what it undoes", []ledger.Fact{fact("u", 0, ledger.Undo, "b", ""), a, b}, []string{"a"}},
		{"redone", []ledger.Fact{a, b, fact("u", 3, ledger.Undo, "b", ""), fact("v", 4, ledger.Undo, "u", "")}, []string{"a", "b"}},
		{"undone again", []ledger.Fact{a, b, fact("u", 3, ledger.Undo, "b", ""), fact("v", 4, ledger.Undo, "u", ""), fact("w", 5, ledger.Undo, "v", "")}, []string{"a"}},
		{"undone twice, redone once", []ledger.Fact{a, fact("u", 3, ledger.Undo, "a", ""), fact("v", 4, ledger.Undo, "a", ""), fact("w", 5, ledger.Undo, "u", "")}, []string{}},
		{"circle", []ledger.Fact{a, fact("u", 3, ledger.Undo, "v", ""), fact("v", 4, ledger.Undo, "u", "")}, []string{"a"}},
		{"itself", []ledger.Fact{a, fact("u", 3, ledger.Undo, "u", "")}, []string{"a"}},
		{"nothing", []ledger.Fact{a, fact("u", 3, ledger.Undo, "z", "")}, []string{"a"}},
	} {
		if got := ids(ledger.Standing(c.facts)); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q stand, want %q", c.name, got, c.want)
		}
	}
}

// An undo of one subject takes back nothing of another, though their ids are the same.
func TestStanding_SubjectsApart(t *testing.T) {
	a, u := fact("a", 1, "told", "called", "x"), fact("u", 2, ledger.Undo, "a", "")
	other, visit := a, a
	other.Of, visit.Book = "c", ledger.VisitBook
	var of []string
	for _, f := range ledger.Standing([]ledger.Fact{a, other, visit, u}) {
		of = append(of, string(f.Book)+" "+f.Of)
	}
	if want := []string{"bike c", "visit b"}; !slices.Equal(of, want) {
		t.Errorf("%q stand, want %q", of, want)
	}
}

// The order is that of the numbers, then of the clock, then of the ids. A number beyond
// the bounds comes before all.
func TestStanding_Order(t *testing.T) {
	late := fact("late", 1, "told", "called", "")
	late.Time = "2026-11-30T13:00:00.000Z"
	list := []ledger.Fact{fact("d", 3, "told", "called", ""), late, fact("c", 1, "told", "called", ""), fact("b", 1, "told", "called", ""),
		fact("far", ledger.MostSeq+1, "told", "called", ""), fact("last", ledger.MostSeq, "told", "called", ""), fact("below", -1, "told", "called", "")}
	if got, want := ids(ledger.Standing(list)), []string{"below", "far", "b", "c", "late", "d", "last"}; !slices.Equal(got, want) {
		t.Errorf("in order: %q, want %q", got, want)
	}
}

// Of two contents under one id one stands, the same whichever comes first.
func TestStanding_TwoContents(t *testing.T) {
	x, y := fact("a", 1, "told", "called", "x"), fact("a", 1, "told", "called", "y")
	for _, list := range [][]ledger.Fact{{x, y}, {y, x}, {y, x, y}} {
		if got := ledger.Standing(list); len(got) != 1 || got[0].Value != "x" {
			t.Errorf("%d stand, of %q", len(got), got[0].Value)
		}
	}
}

// drawn are facts of two subjects, undos of each other among them.
func drawn(t *rapid.T) []ledger.Fact {
	id := rapid.SampledFrom([]string{"a", "b", "c", "d", "e", "f", ""})
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) ledger.Fact {
		return ledger.Fact{
			Book: ledger.BikeBook, Of: rapid.SampledFrom([]string{"b", "c"}).Draw(t, "of"), ID: id.Draw(t, "id"),
			Kind: rapid.SampledFrom([]ledger.FactKind{"told", ledger.Undo, ledger.Undo}).Draw(t, "kind"),
			Time: rapid.SampledFrom([]string{noon, "2026-11-30T13:00:00.000Z", "noon"}).Draw(t, "time"),
			Seq:  rapid.IntRange(-1, 3).Draw(t, "seq"), What: id.Draw(t, "what"),
		}
	}), 0, 14).Draw(t, "facts")
}

// Any order of the facts, and any union of sets that overlap, gives the same.
func TestStanding_Union(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := drawn(t)
		want := texts(ledger.Standing(list))
		if got := texts(ledger.Standing(rapid.Permutation(list).Draw(t, "order"))); !slices.Equal(got, want) {
			t.Fatalf("in another order %q, want %q", got, want)
		}
		cut, from := rapid.IntRange(0, len(list)).Draw(t, "cut"), rapid.IntRange(0, len(list)).Draw(t, "from")
		x, y := list[:max(cut, from)], list[min(cut, from):]
		for _, union := range [][]ledger.Fact{slices.Concat(x, y), slices.Concat(y, x), slices.Concat(y, x, y, x)} {
			if got := texts(ledger.Standing(union)); !slices.Equal(got, want) {
				t.Fatalf("of a union %q, want %q", got, want)
			}
		}
	})
}

// What stands is a part of what came in, each id of a subject once, and taking away
// what doesn't count changes nothing of it.
func TestStanding_Idempotent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := drawn(t)
		standing := ledger.Standing(list)
		seen := map[string]bool{}
		var again []ledger.Fact
		for _, f := range standing {
			if key := f.Of + " " + f.ID; seen[key] || f.ID == "" || f.Kind == ledger.Undo {
				t.Fatalf("%s stands twice, or has no business there", key)
			} else {
				seen[key] = true
			}
			again = append(again, *f)
		}
		if got := texts(ledger.Standing(again)); !slices.Equal(got, texts(standing)) {
			t.Fatalf("once more: %q, want %q", got, texts(standing))
		}
	})
}

// read gives the findings about facts in JSON, as they come through the door.
func read(t *testing.T, in string) (*ledger.Reading, []string) {
	t.Helper()
	var i ledger.Input
	if list := wire.Read([]byte(in), &i); finding.Refused(list) {
		t.Fatalf("%s: %v", in, list)
	}
	r := i.Read()
	var told []string
	for _, f := range r.Findings {
		told = append(told, f.Code+" "+f.Where+" "+string(f.Grade))
	}
	return r, told
}

// A fact that can't be read has no effect and is told; only the one that is about to be
// written is refused.
func TestRead(t *testing.T) {
	const good = `{"book":"bike","of":"b","id":"a","kind":"told","time":"` + noon + `","what":"called","value":"x"}`
	long, err := json.Marshal(string(make([]rune, ledger.TextLetters+1)))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		in   string
		want []string
	}{
		{`{"facts":[` + good + `]}`, nil},
		{`{"facts":[` + good + `],"adding":true}`, nil},
		{`{"facts":[],"adding":true}`, nil},
		{`{"facts":[5,` + good + `]}`, []string{"fact-unread /facts/0 doubt"}},
		{`{"facts":[{"id":5},` + good + `]}`, []string{"fact-unread /facts/0 doubt"}},
		{`{"facts":[` + good + `,{"id":5}],"adding":true}`, []string{"fact-unread /facts/1 refuse"}},
		{`{"facts":[{"id":"c","time":"noon"},` + good + `],"adding":true}`, []string{"bad-time /facts/0/time doubt"}},
		{`{"facts":[` + good + `,{"time":"` + noon + `"}],"adding":true}`, []string{"missing /facts/1/id refuse"}},
		{`{"facts":[` + good + `,{"book":"bike","of":"b","id":"u","kind":"undo","what":"z","time":"` + noon + `"}],"adding":true}`, []string{"undo-unknown /facts/1/what refuse"}},
		{`{"facts":[` + good + `,{"book":"bike","of":"b","id":"u","kind":"undo","what":"u","time":"` + noon + `"}],"adding":true}`, []string{"undo-of-undo /facts/1/what refuse"}},
		{`{"facts":[` + good + `,{"book":"bike","of":"b","id":"u","kind":"undo","what":"a","time":"` + noon + `"}],"adding":true}`, nil},
		{`{"facts":[` + good + `,{"id":"u","kind":"told","time":"` + noon + `","text":` + string(long) + `}],"adding":true}`, []string{"text-too-long /facts/1/text refuse"}},
		{`{"facts":[` + good + `,{"id":"u","kind":"told","time":"` + noon + `","text":` + string(long) + `}]}`, nil},
	} {
		if _, told := read(t, c.in); !slices.Equal(told, c.want) {
			t.Errorf("%.200s\n got %q\nwant %q", c.in, told, c.want)
		}
	}
}

// Reading gives what Standing gives.
func TestRead_Standing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := drawn(t)
		i := ledger.Input{Facts: list, Adding: rapid.Bool().Draw(t, "adding")}
		if got, want := texts(i.Read().Standing), texts(ledger.Standing(list)); !slices.Equal(got, want) {
			t.Fatalf("%q, want %q", got, want)
		}
	})
}

// What tells of a person is told by book, kind and what; the undo of it isn't.
func TestPersonal(t *testing.T) {
	for _, c := range []struct {
		book ledger.Book
		kind ledger.FactKind
		what string
		want bool
	}{
		{ledger.BikeBook, "told", "owner", true},
		{ledger.BikeBook, "told", "reach", true},
		{ledger.BikeBook, "told", "plate", true},
		{ledger.BikeBook, "told", "frame", true},
		{ledger.BikeBook, "told", "called", false},
		{ledger.BikeBook, "figure", "volume.engine", false},
		{ledger.BikeBook, "photo", "side", true},
		{ledger.BikeBook, ledger.Undo, "owner", false},
		{ledger.VisitBook, "said", "wish", true},
		{ledger.VisitBook, "said", "keys", true},
		{ledger.VisitBook, "said", "fuel", false},
		{ledger.VisitBook, "signed", "handover", true},
		{ledger.ShelfBook, "told", "owner", false},
	} {
		if got := ledger.Personal(&ledger.Fact{Book: c.book, Kind: c.kind, What: c.what}); got != c.want {
			t.Errorf("%s %s %s: personal %v", c.book, c.kind, c.what, got)
		}
	}
}

// Many facts, each undone and brought back many times over, are read in one go.
func TestStanding_Many(t *testing.T) {
	const n = 60_000
	list := make([]ledger.Fact, n)
	list[0] = fact("0", 1, "told", "called", "x")
	for i := 1; i < n; i++ {
		list[i] = fact(strconv.Itoa(i), i+1, ledger.Undo, strconv.Itoa(i-1), "")
	}
	if got := ids(ledger.Standing(list)); len(got) != 0 {
		t.Errorf("%q stand after %d undos of each other", got, n-1)
	}
	if got := ids(ledger.Standing(list[:n-1])); len(got) != 1 {
		t.Errorf("%q stand after %d undos of each other", got, n-2)
	}
}
