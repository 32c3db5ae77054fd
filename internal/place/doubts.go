package place

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// open are the findings that say what is still open, and nothing against a reading; and
// that readings contradict each other, which is for whoever read them to say.
var open = [...]string{"reading-twice", "pitch-missing", "torque-and-turn", "no-source"}

// Doubts says of each reading what is odd about it beside a card, nil for none, and beside
// the others of its model: that the card says something else, or what the card's check
// finds not believable. Of one without a text there is none. Findings have no place.
func Doubts(c *card.Card, list []Reading) [][]finding.Finding {
	if c == nil {
		c = Bare(card.WetSump)
	}
	models := []string{""}
	for i := range list {
		if m := list[i].Model; m != "" && !slices.Contains(models, m) {
			models = append(models, m)
		}
	}
	if len(models) > 1 {
		models = models[1:] // what is of all is judged with each
	}
	all := make([][]finding.Finding, len(list))
	page := &Page{Text: strings.Repeat(" ", longest(list))}
	for k, model := range models {
		page.Model = model
		var own []Reading
		var at []int // where they stand
		for i := range list {
			if m := list[i].Model; (m == model || m == "" && k < mostBeside) && list[i].Text != "" {
				own, at = append(own, list[i]), append(at, i)
			}
		}
		for _, f := range Take(c, own, page, quantity.Metric).Findings {
			rest, ok := strings.CutPrefix(f.Where, "/readings/")
			n, err := strconv.Atoi(rest)
			if !ok || err != nil || f.Grade == finding.Note || slices.Contains(open[:], f.Code) {
				continue
			}
			if n = at[n]; slices.ContainsFunc(all[n], func(o finding.Finding) bool { return o.Code == f.Code }) {
				continue
			}
			f.Where = ""
			all[n] = append(all[n], f)
		}
	}
	return all
}

// mostBeside is the most models with which what is of all is judged: a text of many bikes has
// many readings of which nobody knows whose they are, and their doubts would take time in
// proportion to both.
const mostBeside = 8

// longest is a length of a text that holds all that is quoted.
func longest(list []Reading) (most int) {
	for i := range list {
		most = max(most, list[i].Quote.To)
	}
	return most
}

// Bare is a card of which nothing is known but its layout.
func Bare(layout card.Layout) *card.Card {
	return &card.Card{Format: card.Format, Version: card.Version, ID: "card", Layout: layout,
		Circuits: []card.Circuit{{ID: "engine", Role: card.EngineOil}}}
}
