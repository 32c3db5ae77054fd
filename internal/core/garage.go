package core

import (
	"tidysump/internal/finding"
	"tidysump/internal/garage"
	"tidysump/internal/ledger"
	"tidysump/internal/wire"
)

// garageInput is what was told of any number of bikes.
type garageInput struct{ ledger.Input }

// garageAnswer are the bikes, in the order of their ids, and what is wrong with the
// facts.
type garageAnswer struct {
	bikes    []garage.Bike
	findings []finding.Finding
}

func (a *garageAnswer) Members(m *wire.Members) {
	wire.List(m, "bikes", &a.bikes)
	wire.Findings(m, "findings", &a.findings)
}

// garageOf says which bikes there are.
func garageOf(i *garageInput, _ []finding.Finding) (*garageAnswer, []finding.Finding) {
	var a garageAnswer
	a.bikes, a.findings = garage.Replay(&i.Input)
	return &a, nil
}
