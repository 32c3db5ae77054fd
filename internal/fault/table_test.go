package fault_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/fault"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// table is the real one.
var table = func() *fault.Table {
	t := &fault.Table{}
	if list := wire.Read(specs.Faults, t); len(list) > 0 {
		panic(list[0].Code + " " + list[0].Where)
	}
	return t
}()

// answersOf calls work with every way to answer some or all of a problem's
// questions; an unanswered one is not in the map.
func answersOf(f *fault.Fault, work func(answers map[string]string)) {
	var walk func(asks []string, answers map[string]string)
	walk = func(asks []string, answers map[string]string) {
		if len(asks) == 0 {
			work(answers)
			return
		}
		walk(asks[1:], answers)
		for _, a := range strings.Fields(table.Questions[asks[0]]) {
			with := maps.Clone(answers)
			with[asks[0]] = a
			walk(asks[1:], with)
		}
	}
	walk(f.Asks, map[string]string{})
}

// handsOf gives every choice of what may be at hand.
func handsOf(f *fault.Fault) [][]string {
	list := [][]string{nil}
	for _, thing := range f.Hand {
		for _, have := range list {
			list = append(list, append(slices.Clone(have), thing))
		}
	}
	return list
}

// Over all problems, answers and things at hand: an answer left out is never better
// than the worst one, and more at hand never makes it worse.
func TestJudge_UnknownCountsAgainst(t *testing.T) {
	for n := range table.Faults {
		f := &table.Faults[n]
		for _, hand := range handsOf(f) {
			answersOf(f, func(answers map[string]string) {
				got := fault.Judge(table, f, answers, hand)
				worst := 0
				for q := range open(f, answers) {
					for _, a := range strings.Fields(table.Questions[q]) {
						with := maps.Clone(answers)
						with[q] = a
						worst = max(worst, fault.Rank(fault.Judge(table, f, with, hand).Outcome))
					}
				}
				if worst > 0 && fault.Rank(got.Outcome) != worst {
					t.Errorf("%s %v %v: %s, and the worst answer gives %d", f.ID, answers, hand, got.Outcome, worst)
				}
				for _, more := range f.Hand {
					with := append(slices.Clone(hand), more)
					if better := fault.Judge(table, f, answers, with); fault.Rank(better.Outcome) > fault.Rank(got.Outcome) {
						t.Errorf("%s %v %v: %s, and with %s %s", f.ID, answers, hand, got.Outcome, more, better.Outcome)
					}
				}
			})
		}
	}
}

func open(f *fault.Fault, answers map[string]string) map[string]bool {
	list := map[string]bool{}
	for _, q := range f.Asks {
		list[q] = answers[q] == ""
	}
	maps.DeleteFunc(list, func(_ string, is bool) bool { return !is })
	return list
}

// Each row of the table is what follows from something, and what may be at hand
// changes something; where all is answered, a row holds.
func TestTable_EveryRowIsReached(t *testing.T) {
	for n := range table.Faults {
		f := &table.Faults[n]
		reached := map[string]bool{}
		for _, hand := range handsOf(f) {
			answersOf(f, func(answers map[string]string) {
				v := fault.Judge(table, f, answers, hand)
				reached[key(&v.Row)] = true
				if v.Why == "" || v.Source == "" || v.Feared && v.Sure != "guess" {
					t.Errorf("%s %v %v: %+v", f.ID, answers, hand, v)
				}
				if v.Outcome == "ride-gently" && (v.To == "" || len(v.Limits) == 0) {
					t.Errorf("%s %v %v: ride gently, but how far?", f.ID, answers, hand)
				}
			})
		}
		for r := range f.Rows {
			if row := &f.Rows[r]; !reached[key(row)] {
				t.Errorf("%s: row %d (%v %v) is never reached", f.ID, r, row.When, row.With)
			}
		}
	}
}

// key names a row among the others of its problem.
func key(r *fault.Row) string {
	parts := slices.Clone(r.With)
	for _, q := range slices.Sorted(maps.Keys(r.When)) {
		parts = append(parts, q+"="+r.When[q])
	}
	return strings.Join(parts, " ")
}

// What the table names is there, and is used.
func TestTable_IsWhole(t *testing.T) {
	asked, ids, warned := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, f := range table.Faults {
		if ids[f.ID] || len(f.Asks) > 4 {
			t.Errorf("%s stands twice, or asks %d questions", f.ID, len(f.Asks))
		}
		ids[f.ID] = true
		for _, q := range f.Asks {
			asked[q] = true
		}
		for _, thing := range f.Hand {
			if !slices.ContainsFunc(f.Rows, func(r fault.Row) bool { return slices.Contains(r.With, thing) }) {
				t.Errorf("%s: no row needs %s", f.ID, thing)
			}
		}
		for _, r := range f.Rows {
			checkRow(t, &f, &r)
			for _, w := range r.Warns {
				warned[w] = true
			}
		}
	}
	if len(ids) < 50 {
		t.Errorf("only %d problems", len(ids))
	}
	if len(asked) != len(table.Questions) || len(warned) != len(table.Warns) {
		t.Errorf("of %d questions %d are asked, of %d cautions %d given", len(table.Questions), len(asked), len(table.Warns), len(warned))
	}
}

func checkRow(t *testing.T, f *fault.Fault, r *fault.Row) {
	t.Helper()
	for q, answers := range r.When {
		for _, a := range strings.Fields(answers) {
			if !slices.Contains(f.Asks, q) || !slices.Contains(strings.Fields(table.Questions[q]), a) {
				t.Errorf("%s: a row wants %s=%s, which is not asked", f.ID, q, a)
			}
		}
	}
	for _, thing := range r.With {
		if !slices.Contains(f.Hand, thing) {
			t.Errorf("%s: a row needs %s, which is not asked for", f.ID, thing)
		}
	}
	severity := 0 // the worst caution is read first
	for _, w := range r.Warns {
		n := slices.Index([]string{"DANGER", "WARNING", "CAUTION", "NOTICE"}, table.Warns[w])
		if n < severity {
			t.Errorf("%s: %s is a %q, after one that is milder", f.ID, w, table.Warns[w])
		}
		severity = n
	}
	if fault.Rank(r.Outcome) == 0 || !slices.Contains([]string{"sure", "likely", "guess"}, r.Sure) {
		t.Errorf("%s: outcome %q, sure %q", f.ID, r.Outcome, r.Sure)
	}
}
