package line_test

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"tidysump/internal/calc"
	"tidysump/internal/finding"
	"tidysump/internal/line"
	"tidysump/internal/quantity"
)

// bits are figures and signs as they stand in lines, right and wrong ones.
var bits = []string{"25", "25 Nm", "18 lb", "18 lbf·ft", "60 mm", "70 C", "70°", "3 l", "2.6 qt", "10w40", "M14x1.5", "20 %", "2/3", "5 s",
	"10 min", "3.4 bar", "1,500", "20 to 100 Nm", "14 mm²/s", "ma2", "MA2", "SL", ",", ";", "-", ":", "…", "½ turn", "1e999", "۲۵ Nm", "ß", "🛢️", "\u200f", "\n", "0"}

// drawLine draws a line of words of the bench in one language, and of figures.
func drawLine(t *rapid.T, all []spoken) (text, language string) {
	s := rapid.SampledFrom(all).Draw(t, "language")
	var senses []string
	for sense := range s.bench {
		senses = append(senses, sense)
	}
	slices.Sort(senses)
	var parts []string
	for range rapid.IntRange(1, 8).Draw(t, "parts") {
		if rapid.Bool().Draw(t, "figure") {
			parts = append(parts, rapid.SampledFrom(bits).Draw(t, "bit"))
		} else {
			parts = append(parts, rapid.SampledFrom(s.bench[rapid.SampledFrom(senses).Draw(t, "sense")]).Draw(t, "word"))
		}
	}
	return strings.Join(parts, " "), s.language
}

// Whatever stands in a line: what is quoted stands in it, a field gets one thing at most,
// no torque comes of what is none, and every calculation takes what it is given.
func TestRead_NothingByGuess(t *testing.T) {
	all := languages(t)
	rapid.Check(t, func(t *rapid.T) {
		text, language := drawLine(t, all)
		system := rapid.SampledFrom(quantity.Systems).Draw(t, "system")
		r := line.Read(&line.Ask{Text: text, System: system, Language: language})
		quoted := func(from, to int) string {
			if from < 0 || to > len(text) || from >= to || !utf8.RuneStart(text[from]) || to < len(text) && !utf8.RuneStart(text[to]) {
				t.Fatalf("%q: a quote from %d to %d", text, from, to)
			}
			return text[from:to]
		}
		for _, q := range r.Unread {
			quoted(q.From, q.To)
		}
		seen := map[string]bool{}
		for _, p := range r.Pieces {
			quote := quoted(p.From, p.To)
			if p.Field == "" {
				if len(p.Options) == 0 {
					t.Fatalf("%q: %q goes nowhere and is offered nowhere", text, quote)
				}
				continue
			}
			key := p.List + string(rune('0'+p.Row)) + p.Field
			if seen[key] {
				t.Fatalf("%q: %s is filled twice", text, key)
			}
			seen[key] = true
			if d := fieldOf(r.Op, p.List, p.Field); d.Kind == quantity.Torque {
				q := quantity.Ask{Kind: quantity.Torque, System: system}
				if _, _, _, notes := q.ReadRange(p.Text); finding.Refused(notes) {
					t.Fatalf("%q: %q is taken for the torque %q", text, quote, p.Text)
				}
			}
		}
		if (r.Answer == nil) == (r.Op != "" && len(r.Lacks) == 0) {
			t.Fatalf("%q: neither an answer nor what is lacking", text)
		}
	})
}

// fieldOf gives a field of a calculation, or of a list's rows.
func fieldOf(op, list, name string) *calc.Asked {
	var found *calc.Asked
	asks(func(c *calc.Calculation, of string, d *calc.Asked) {
		if c.Op == op && of == list && d.Name == name {
			found = d
		}
	})
	return found
}

// A number without a unit is no torque, whatever calls it one, in any language.
func TestRead_NoTorqueWithoutUnit(t *testing.T) {
	all := languages(t)
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(all).Draw(t, "language")
		op := rapid.SampledFrom([]string{"wrench", "torque-check"}).Draw(t, "calculation")
		number := rapid.SampledFrom([]string{"25", "7.5", "18 lb", "18 lbs", "3 kg", "2/3"}).Draw(t, "number")
		name := rapid.SampledFrom(append(s.names(op, "torque"), "")).Draw(t, "name")
		text := s.bench["calc."+op][0] + " " + name + " " + number
		r := line.Read(&line.Ask{Text: text, System: quantity.US, Language: s.language})
		for _, p := range r.Pieces {
			if p.Field == "torque" {
				t.Fatalf("%s: %q fills %q", s.language, text, p.Text)
			}
		}
	})
}

// What the person says of a piece that was offered is taken, and asked no more.
func TestRead_TakesWhatIsSaid(t *testing.T) {
	all := languages(t)
	offers := 0
	rapid.Check(t, func(t *rapid.T) {
		text, language := drawLine(t, all)
		ask := line.Ask{Text: text, System: quantity.Metric, Language: language}
		r := line.Read(&ask)
		for _, p := range r.Pieces {
			for _, o := range p.Options {
				if o.Word != "" {
					continue
				}
				offers++
				again := ask
				again.Op, again.Language = r.Op, r.Language
				again.Put = []line.Put{{Quote: p.Span, List: o.List, Field: o.Field, Text: o.Text}}
				taken := false
				for _, q := range line.Read(&again).Pieces {
					taken = taken || q.Field == o.Field && q.List == o.List && q.Text == o.Text
				}
				if !taken {
					t.Fatalf("%q: %q is offered for %s and not taken", text, o.Text, o.Field)
				}
			}
		}
	})
	if offers == 0 {
		t.Error("nothing was offered")
	}
}
