package core

import (
	"tidysump/internal/books"
	"tidysump/internal/finding"
)

// oldOil says what is in the cans of old oil, and what was handed in.
func oldOil(i *books.OldOilInput, _ []finding.Finding) (*books.OldOilAnswer, []finding.Finding) {
	system, list := systemOf(i.System)
	if list != nil {
		return nil, list
	}
	i.System = system
	a := books.OldOil(i)
	if finding.Refused(a.Findings) {
		return nil, a.Findings
	}
	return a, nil
}

// wrenches says what the checks of the torque wrenches mean.
func wrenches(i *books.WrenchInput, _ []finding.Finding) (*books.WrenchBook, []finding.Finding) {
	system, list := systemOf(i.System)
	if list != nil {
		return nil, list
	}
	i.System = system
	a := books.Wrenches(i)
	if finding.Refused(a.Findings) {
		return nil, a.Findings
	}
	return a, nil
}
