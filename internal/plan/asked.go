package plan

import (
	"tidysump/internal/card"
	"tidysump/internal/shown"
)

// What a job asks of its plan, besides what is written of it.

// Card is the card of the plan, with a fastener for each filter and strainer that
// none on it holds.
func (p *Plan) Card() *card.Card { return p.day.card }

// Circuits are those whose oil is changed today.
func (p *Plan) Circuits() []*card.Circuit { return p.day.circuits }

// Volume is the card's figure of a circuit's volume due today: with the filter if
// that is changed.
func (p *Plan) Volume(c *card.Circuit) *card.Figure { return p.day.volume(c) }

// Printer prints figures in the units of the plan's bench.
func (p *Plan) Printer() *shown.Printer { return &p.day.print }

// Step gives the step of that id, nil when there is none.
func (p *Plan) Step(id string) *Step {
	for i := range p.Steps {
		if p.Steps[i].ID == id {
			return &p.Steps[i]
		}
	}
	return nil
}
