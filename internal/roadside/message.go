package roadside

import (
	"slices"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/fault"
)

// Seen is what was met with a bike: a problem of the table, what was answered, by
// question, and what is at hand. Bike is what the bike is called, or empty; Card is
// its card, nil where none is known.
type Seen struct {
	Table   *fault.Table
	Fault   *fault.Fault
	Answers map[string]string
	Hand    []string
	Bike    string
	Card    *card.Checked
}

// Message is what whoever fetches the bike has to know, a sentence a line: which bike,
// what is wrong, what follows, what was seen and what nobody looked at, what to bring.
func (s *Seen) Message() []Line {
	now := fault.Judge(s.Table, s.Fault, s.Answers, s.Hand)
	var lines []Line
	if s.Bike != "" {
		lines = append(lines, say("say.bike", "bike", s.Bike))
	}
	lines = append(lines, say("say.problem", "problem", "@fault."+s.Fault.ID), say("say.fetch."+now.Outcome))
	for _, word := range []string{now.To, now.Why} {
		if word != "" {
			lines = append(lines, Line{Word: word})
		}
	}
	for _, q := range s.Fault.Asks {
		lines = append(lines, s.answer(q))
	}
	for _, thing := range s.Fault.Hand {
		if slices.Contains(s.Hand, thing) {
			lines = append(lines, say("say.hand", "thing", "@hand."+thing))
		}
	}
	lines = append(lines, s.bring(now)...)
	return append(lines, say("say.where"), say("say.defer"))
}

// answer says what was answered to a question: "none of these" leaves it as open as
// before.
func (s *Seen) answer(q string) Line {
	ask, a := "@fault-ask."+q, s.Answers[q]
	if a == "" || a == fault.Other || !slices.Contains(strings.Fields(s.Table.Questions[q]), a) {
		return Line{Word: "say.open", Values: map[string]string{"ask": ask}, Unknown: true}
	}
	return say("say.answer", "ask", ask, "answer", "@fault-answer."+q+"."+a)
}

// bring says what to bring, where something that is not at hand would make it better.
func (s *Seen) bring(now *fault.Verdict) []Line {
	things, then := Better(s.Table, s.Fault, s.Answers, s.Hand, now)
	var lines []Line
	for _, thing := range things {
		lines = append(lines, say("say.bring", "thing", "@hand."+thing))
		if thing == "oil" && s.Card != nil {
			lines = append(lines, oilOf(s.Card.Card()))
		}
	}
	if then != nil {
		lines = append(lines, say("say.better."+then.Outcome))
	}
	return lines
}

// oilOf names the engine's oil.
func oilOf(c *card.Card) Line {
	for n := range c.Circuits {
		if r := &c.Circuits[n]; r.Role == card.EngineOil && len(r.Oil.Grades) > 0 {
			return say("say.oil", "grade", r.Oil.Grades[0])
		}
	}
	return unknown("say.oil.unknown")
}

// mostMissing bounds what a foreign table can ask for; the real one has five at most.
const mostMissing = 6

// Better gives the fewest things that are not at hand and with which it may be ridden,
// where it may not be now or only gently, and what follows then; nothing where none of
// them helps. Of as many things those count with which most is allowed, and then those
// that come first in the table.
func Better(t *fault.Table, f *fault.Fault, answers map[string]string, hand []string, now *fault.Verdict) ([]string, *fault.Verdict) {
	var missing []string
	for _, thing := range f.Hand {
		if !slices.Contains(hand, thing) && len(missing) < mostMissing {
			missing = append(missing, thing)
		}
	}
	var best []string
	var then *fault.Verdict
	for set := 1; set < 1<<len(missing); set++ {
		var some []string
		for n, thing := range missing {
			if set&(1<<n) != 0 {
				some = append(some, thing)
			}
		}
		if then != nil && len(some) > len(best) {
			continue
		}
		v := fault.Judge(t, f, answers, append(slices.Clone(hand), some...))
		rank := fault.Rank(v.Outcome)
		if fault.Stops(v.Outcome) || rank >= fault.Rank(now.Outcome) {
			continue
		}
		if then == nil || len(some) < len(best) || rank < fault.Rank(then.Outcome) {
			best, then = some, v
		}
	}
	return best, then
}
