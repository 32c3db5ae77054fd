package place_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/place"
)

// ways are what pages may say of one thing: the texts of a row are one figure within each
// other's rounding, those of two rows are two.
var ways = map[place.What][][]string{
	"oil.engine.with-filter": {{"1.6 L", "1600 cm³"}, {"1.8 L", "1800 mL"}, {"2.4 L"}},
	"bolt.drain.torque":      {{"25 N·m", "2.5 kgf·m", "18 lbf·ft"}, {"20 N·m"}, {"18–22 N·m"}},
	"bolt.drain.thread":      {{"M12x1.5", "M12"}, {"M14x1.5"}},
	"bolt.drain.seal":        {{"flat-copper"}, {"o-ring"}},
	"interval.distance":      {{"6,000 km", "6000 km", "4,000 mi"}, {"12,000 km"}},
	"filter.kind":            {{"spin-on"}, {"cartridge"}},
	"filter.every":           {{"1"}, {"2"}},
	"make":                   {{"Plainford", "PLAINFORD"}, {"Orrinshaw"}},
	"years":                  {{"2014-2018"}, {"2014-"}, {"2016"}},
	"displacement":           {{"320 cm³", "320 cc"}, {"500 cm³"}},
}

// lists are things that may have several answers, of which each counts.
var lists = map[place.What][][]string{"oil.engine.grades": {{"10W-40"}, {"20W-50"}}, "oil.engine.marks": {{"MA"}, {"MB"}}}

// saying is a reading, and which way of its thing it is.
type saying struct {
	place.Reading
	way int
}

var things = func() []place.What {
	var all []place.What
	for _, what := range place.Whats() {
		if ways[what] != nil || lists[what] != nil {
			all = append(all, what)
		}
	}
	return all
}()

func drawSaying(t *rapid.T) saying {
	what := rapid.SampledFrom(things).Draw(t, "what")
	of := slices.Concat(ways[what], lists[what])
	s := saying{way: rapid.IntRange(0, len(of)-1).Draw(t, "way")}
	s.What = what
	s.Text = rapid.SampledFrom(of[s.way]).Draw(t, "text")
	s.Model = rapid.SampledFrom([]string{"", "", "", "Heron 320", "Pike 500"}).Draw(t, "model")
	s.Stand = rapid.SampledFrom([]place.Stand{"", "", place.Sure, place.Sure, place.TakenIn, place.LeftOut, place.Refused}).Draw(t, "stand")
	return s
}

// readingsOf are what is said, as readings.
func readingsOf(all []saying) (list []place.Reading) {
	for _, one := range all {
		list = append(list, one.Reading)
	}
	return list
}

// counter reports whether two readings contradict each other.
func counter(a, b *saying) bool {
	return a.What == b.What && ways[a.What] != nil && a.way != b.way && a.Stand != place.LeftOut && b.Stand != place.LeftOut &&
		(a.Model == b.Model || a.Model == "" || b.Model == "")
}

// Whatever several pages say: two readings that contradict each other are in one question,
// which has all that is said of that thing and nothing of another; neither is sure; what is
// said to be contested is contradicted by something; and each reading is sure, taken, left
// out or asked.
func TestJudge_EachContradictionOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := rapid.SliceOfN(rapid.Custom(drawSaying), 0, 20).Draw(t, "readings")
		j := place.Judge(readingsOf(all), nil)
		contested := map[place.What]bool{}
		for a := range all {
			for b := range all {
				if counter(&all[a], &all[b]) {
					contested[all[a].What] = true
					if j.Asked[a] == 0 || j.Asked[a] != j.Asked[b] {
						t.Fatalf("%+v and %+v: questions %d and %d", all[a], all[b], j.Asked[a], j.Asked[b])
					}
				}
				if j.Asked[a] != 0 && j.Asked[a] == j.Asked[b] && all[a].What != all[b].What {
					t.Fatalf("%+v and %+v are one question", all[a], all[b])
				}
			}
		}
		for a, one := range all {
			among := contested[one.What]
			sure := one.Stand == place.Sure && !among
			open := one.Stand != place.LeftOut && (among || one.Stand == "" || one.Stand == place.Refused)
			if slices.Contains(j.Sure, a) != sure || (j.Asked[a] > 0) != open {
				t.Fatalf("%+v: question %d, sure %v", one, j.Asked[a], j.Sure)
			}
			if slices.Contains(j.Contested, one.What) != among {
				t.Fatalf("%s: contested are %v", one.What, j.Contested)
			}
		}
		if len(j.Contested) != len(contested) {
			t.Fatalf("contested are %v", j.Contested)
		}
	})
}

// In which order pages come changes nothing but the numbers.
func TestJudge_AnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pages := rapid.SliceOfN(rapid.Custom(drawSaying), 0, 20).Draw(t, "readings")
		order := rapid.Permutation(pages).Draw(t, "order")
		if one, other := told(pages), told(order); one != other {
			t.Fatalf("%s\nin another order\n%s", one, other)
		}
	})
}

// told is what is judged of readings, in words that their order has no part in.
func told(all []saying) string {
	j := place.Judge(readingsOf(all), nil)
	asked := map[int][]string{}
	for n, q := range j.Asked {
		asked[q] = append(asked[q], fmt.Sprint(all[n], slices.Contains(j.Sure, n)))
	}
	var lines []string
	for q, list := range asked {
		slices.Sort(list)
		lines = append(lines, fmt.Sprint(q > 0, " ", list))
	}
	slices.Sort(lines)
	return strings.Join(lines, "\n")
}

// Until the person says which of several models the bike is, nothing is asked that depends
// on it; then what is of that one contradicts what is of all.
func TestJudge_ModelFirst(t *testing.T) {
	list := []place.Reading{
		{What: "bolt.drain.torque", Text: "25 N·m", Stand: place.Sure},
		{What: "filter.kind", Text: "spin-on", Stand: place.Sure},
		{What: "model", Text: "Heron 320", Model: "Heron 320"},
		{What: "bolt.drain.torque", Text: "20 N·m", Model: "Heron 320"},
		{What: "oil.engine.dry", Text: "2 L", Model: "Heron 320"},
	}
	for _, c := range []struct {
		models []string
		want   string
	}{
		{[]string{"Heron 320", "Pike 500"}, "[1] [0 0 0 0 0] [bolt.drain.torque]"},
		{nil, "[1] [3 0 1 3 2] [bolt.drain.torque]"},
	} {
		j := place.Judge(list, c.models)
		if got := fmt.Sprint(j.Sure, j.Asked, j.Contested); got != c.want {
			t.Errorf("%v: %s, want %s", c.models, got, c.want)
		}
	}
}
