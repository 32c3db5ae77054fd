package place

import (
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// Doubts says of each reading what is odd about it beside a card, nil for none, and beside
// the others: that the card says something else, or what the card's check finds not
// believable. Findings have no place. That readings contradict each other is for whoever
// read them to say.
func Doubts(c *card.Card, list []Reading) [][]finding.Finding {
	if c == nil {
		c = Bare(card.WetSump)
	}
	all := make([][]finding.Finding, len(list))
	for _, f := range Take(c, list, &Page{Text: strings.Repeat(" ", longest(list))}, quantity.Metric).Findings {
		rest, ok := strings.CutPrefix(f.Where, "/readings/")
		number, _, _ := strings.Cut(rest, "/")
		n, err := strconv.Atoi(number)
		if !ok || err != nil || f.Grade == finding.Note || f.Code == "reading-twice" {
			continue
		}
		f.Where = ""
		all[n] = append(all[n], f)
	}
	return all
}

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
