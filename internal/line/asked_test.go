package line_test

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tidysump/internal/calc"
	"tidysump/internal/line"
	"tidysump/internal/quantity"
	"tidysump/specs"
)

// spoken are the words of the bench in one language, by what they mean.
type spoken struct {
	language string
	bench    map[string][]string
	terms    map[string][]string
}

// languages gives those that know words of the bench.
func languages(t testing.TB) []spoken {
	var list []spoken
	for name, text := range specs.Terms() {
		var of struct {
			Language     string
			Bench, Terms map[string][]string
		}
		if err := json.Unmarshal(text, &of); err != nil {
			t.Fatal(name, err)
		}
		if len(of.Bench) > 0 {
			list = append(list, spoken{of.Language, of.Bench, of.Terms})
		}
	}
	slices.SortFunc(list, func(a, b spoken) int { return strings.Compare(a.language, b.language) })
	if len(list) < 6 {
		t.Fatalf("%d languages know words of the bench", len(list))
	}
	return list
}

// names lists the spellings that name a field.
func (s *spoken) names(op, field string) []string {
	return slices.Concat(s.bench["ask."+op+"."+field], s.bench["ask."+field])
}

// says lists the spellings of a word that is chosen.
func (s *spoken) says(sense string) (list []string) {
	for _, spelling := range slices.Concat(s.bench[sense], s.terms[sense]) {
		list = append(list, strings.ReplaceAll(spelling, "*", ""))
	}
	return list
}

// sample is a figure that may stand in a field.
func sample(d *calc.Asked) string {
	switch d.Says {
	case calc.Thread:
		return "M14x1.5"
	case calc.Grade:
		return "10W-40"
	case calc.Mark:
		return "MA2"
	case calc.Service:
		return "SL"
	case calc.Amount:
		return "25 N·m"
	case calc.Lines:
		return "10W-40: -10 to 30 °C"
	}
	switch d.Kind {
	case calc.Text:
		return "Ada"
	case calc.Taps:
		return "0 2.1 4 6.2"
	case calc.Choice:
		return d.Words[0]
	}
	low, high := d.Low, d.High
	if high == 0 {
		low, high = 1, 100
	}
	v := (low + high) / 2
	if low >= 0 {
		v = math.Sqrt(max(low, high/1e4) * high)
	}
	text := quantity.Number(v, 2)
	if d.Kind == calc.Number {
		return text
	}
	return text + " " + quantity.Base(d.Kind)
}

// filledIn tells whether a line filled a field, whether it offers it, and into which
// other fields it put anything.
func filledIn(r *line.Reading, list, field string) (filled, offered bool, others []string) {
	for _, p := range r.Pieces {
		switch {
		case p.Field == field && p.List == list:
			filled = true
		case p.Field != "":
			others = append(others, p.Field)
		}
		for _, o := range p.Options {
			offered = offered || o.Field == field && o.List == list
		}
	}
	return filled, offered, others
}

// asks goes through all fields of all calculations in a language, those of lists with the
// list's name.
func asks(each func(c *calc.Calculation, list string, d *calc.Asked)) {
	all := calc.AtBench()
	for n := range all {
		fields := all[n].Asks()
		for i := range fields {
			d := &fields[i]
			for k := range d.Rows {
				each(&all[n], d.Name, &d.Rows[k])
			}
			if d.Kind != calc.List {
				each(&all[n], "", d)
			}
		}
	}
}

// before is what has to be said for a field to make sense.
func before(s *spoken, c *calc.Calculation, d *calc.Asked) string {
	for _, on := range c.Asks() {
		if on.Name == d.On && d.On != "" {
			return s.says(on.Family + d.When[0])[0] + ", "
		}
	}
	return ""
}

// Every field of every calculation can be filled by naming it, in every language; a name
// that several fields share fills one of them or asks which, and never another one.
func TestRead_EveryField(t *testing.T) {
	for _, s := range languages(t) {
		asks(func(c *calc.Calculation, list string, d *calc.Asked) {
			if d.Kind == calc.Yes || d.Kind == calc.Choice && d.Family != "" {
				return
			}
			fills := false
			names := s.names(c.Op, d.Name)
			if len(names) == 0 {
				names = []string{""} // it goes without one
			}
			for n, name := range names {
				text := s.bench["calc."+c.Op][0] + ", " + before(&s, c, d) + name + " " + sample(d)
				ask := &line.Ask{Text: text, System: quantity.Metric, Language: s.language}
				if n > 0 { // which calculation is meant was told by the first
					ask.Op = c.Op
				}
				r := line.Read(ask)
				filled, offered, _ := filledIn(r, list, d.Name)
				fills = fills || filled && r.Op == c.Op
				if !filled && !offered && !shared(&s, c, list, d, name) {
					t.Errorf("%s: %q fills no %s of %s, but %v of %q", s.language, text, d.Name, c.Op, told(r), r.Op)
				}
			}
			if !fills && sole(c, list, d) {
				t.Errorf("%s: none of %q fills %s of %s", s.language, names, d.Name, c.Op)
			}
		})
	}
}

// shared reports whether a name is one of another field of the calculation, which a
// figure of this kind fits too.
func shared(s *spoken, c *calc.Calculation, list string, d *calc.Asked, name string) bool {
	found := false
	asks(func(other *calc.Calculation, of string, e *calc.Asked) {
		if other.Op == c.Op && (e.Name != d.Name || of != list) && e.Kind == d.Kind && e.Says == d.Says {
			found = found || slices.Contains(s.names(c.Op, e.Name), name)
		}
	})
	return found
}

// sole reports whether a field stands for itself: one beside another field's figure is
// filled only beside that, one of a list that the calculation has by itself too only
// beside the others of its row.
func sole(c *calc.Calculation, list string, d *calc.Asked) bool {
	twin := slices.ContainsFunc(c.Asks(), func(e calc.Asked) bool { return list != "" && e.Name == d.Name })
	return d.Beside == "" && !twin
}

// told lists what a reading made of a line.
func told(r *line.Reading) (list []string) {
	for _, p := range r.Pieces {
		list = append(list, p.List+"/"+p.Field+"="+p.Text)
		for _, o := range p.Options {
			list = append(list, "?"+o.Field)
		}
	}
	return list
}

// Every word of every choice can be said, and every box ticked, in every language.
func TestRead_EveryChoice(t *testing.T) {
	for _, s := range languages(t) {
		asks(func(c *calc.Calculation, list string, d *calc.Asked) {
			check := func(spellings []string, want string) {
				fills := false
				for _, spelling := range spellings {
					if fills {
						return
					}
					text := s.bench["calc."+c.Op][0] + ", " + before(&s, c, d) + spelling
					r := line.Read(&line.Ask{Text: text, System: quantity.Metric, Language: s.language})
					for _, p := range r.Pieces {
						fills = fills || p.Field == d.Name && p.List == list && p.Text == want && r.Op == c.Op
					}
				}
				if !fills {
					t.Errorf("%s: none of %q says %s of %s of %s", s.language, spellings, want, d.Name, c.Op)
				}
			}
			switch {
			case d.Kind == calc.Yes:
				check(s.names(c.Op, d.Name), "yes")
			case d.Kind == calc.Choice && d.Family != "":
				for _, w := range d.Words {
					check(s.says(d.Family+w), w)
				}
			}
		})
	}
}

// Each calculation is called by its words, in every language.
func TestRead_EveryCalculation(t *testing.T) {
	for _, s := range languages(t) {
		for _, c := range calc.AtBench() {
			for _, word := range s.bench["calc."+c.Op] {
				r := line.Read(&line.Ask{Text: word, System: quantity.Metric, Language: s.language})
				if !slices.Contains(r.Ops, c.Op) {
					t.Errorf("%s: %q calls %v, not %s", s.language, word, r.Ops, c.Op)
				}
			}
		}
	}
}

// Numbers are said in words, in every language: whole ones of tens and units, with what
// joins them or without, also below zero.
func TestRead_NumbersInWords(t *testing.T) {
	for _, s := range languages(t) {
		first := func(sense string) string {
			list := s.says(sense)
			if len(list) == 0 {
				t.Fatalf("%s: no word for %s", s.language, sense)
			}
			return list[0]
		}
		said := func(words, want string) {
			t.Helper()
			r := line.Read(&line.Ask{Text: words, System: quantity.Metric, Language: s.language})
			if got := filled(r)["text"]; got != want {
				t.Errorf("%s: %q is %q, want %q", s.language, words, got, want)
			}
		}
		and := first("join.and")
		for tens := 20; tens <= 90; tens += 10 {
			ten := first("number." + strconv.Itoa(tens))
			for units := 1; units <= 9; units++ {
				unit := first("number." + strconv.Itoa(units))
				want := strconv.Itoa(tens+units) + " mm"
				said(ten+" "+unit+" mm", want)
				if units == 5 {
					said(ten+" "+and+" "+unit+" mm", want)
					said(ten+"-"+unit+" mm", want)
				}
			}
		}
		said(first("number.2")+" "+first("number.100")+" "+first("number.50")+" mm", "250 mm")
		said(first("number.minus")+" "+first("number.10")+" °C", "-10 °C")
		said(first("number.3")+" "+first("number.point")+" "+first("number.5")+" mm", "3.5 mm")
		for id, want := range map[string]string{"N·m": "25 N·m", "lbf·ft": "25 lbf·ft", "L": "25 L", "mL": "25 mL", "min": "25 min",
			"s": "25 s", "h": "25 h", "mm": "25 mm", "°C": "25 °C", "km": "25 km"} {
			said("25 "+first("unit."+id), want)
		}
	}
}

// What falls in one unit of time is told with a word such as "per", in every language.
func TestRead_PerTime(t *testing.T) {
	for _, s := range languages(t) {
		per, drops, minute := s.bench["number.per"], s.names("leak", "drops"), s.says("unit.min")
		if len(per) == 0 {
			t.Errorf("%s: no word for number.per", s.language)
		}
		for _, word := range per {
			text := "5 " + drops[len(drops)-1] + " " + word + " " + minute[0]
			r := line.Read(&line.Ask{Text: text, System: quantity.Metric, Language: s.language})
			if got := filled(r); r.Op != "leak" || got["drops"] != "5" || got["time"] != "1 min" || len(r.Unread) > 0 {
				t.Errorf("%s: %q is %s, %v, not understood: %v", s.language, text, r.Op, got, r.Unread)
			}
		}
	}
}
