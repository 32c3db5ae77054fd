package core

import (
	"tidysump/internal/calc"
	"tidysump/internal/finding"
)

// forms lists what the calculations ask for.
func forms(i *calc.Ask, _ []finding.Finding) (*calc.Forms, []finding.Finding) {
	system, list := systemOf(i.System)
	if list != nil {
		return nil, list
	}
	i.System = system
	return calc.FormsOf(i), nil
}
