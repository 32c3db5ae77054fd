package core

import (
	"slices"

	"tidysump/internal/calc"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Operation is one thing that the core can be asked. Input and Answer make what it
// reads and what it writes, empty, so that both can be listed.
type Operation struct {
	Name   string
	Input  func() wire.Record
	Answer func() wire.Record
	// run gives the answer to an input, nil where the findings refuse one. read is
	// what reading the input found.
	run      func(in wire.Record, read []finding.Finding) (wire.Record, []finding.Finding)
	tolerant bool // it judges by itself what reading found
}

// operations are all but the calculations.
var operations = [...]Operation{
	operation("asked", askedOf),
	tolerant(operation("bill-lines", billLines)),
	operation("card-changes", cardChanges),
	tolerant(operation("cards", cards)),
	operation("due", dueAgain),
	operation("due-notice", dueNotice),
	operation("calendar", calendarText),
	operation("csv", csvText),
	tolerant(operation("check-card", checkCard)),
	operation("fault", judgeFault),
	tolerant(operation("filter-kind", filterKind)),
	operation("find", findBikes),
	operation("first-entries", firstEntries),
	operation("forms", forms),
	operation("garage", garageOf),
	tolerant(operation("job-page", jobPage)),
	operation("judge-pages", judgePages),
	operation("last-job", lastJob),
	operation("lay-over", layOver),
	operation("limits", limits),
	operation("old-oil", oldOil),
	operation("plan", readPlan),
	operation("read-entry", readEntry),
	tolerant(operation("read-line", readLine)),
	operation("read-page", readManual),
	tolerant(operation("replay", replay)),
	operation("roadside", besideBike),
	operation("shelf", shelf),
	tolerant(operation("survey", surveyJobs)),
	tolerant(operation("take-readings", takeReadings)),
	tolerant(operation("tell-page", tellPage)),
	operation("unsaved", unsaved),
	operation("visit", visitState),
	operation("visits", visitsToday),
	operation("wrenches", wrenches),
}

// all are the operations, the calculations among them.
var all = withCalculations(operations[:])

func withCalculations(list []Operation) []Operation {
	for _, c := range calc.All() {
		list = append(list, calculation(c))
	}
	return list
}

// Operations lists what the core can be asked.
func Operations() []Operation { return slices.Clone(all) }

func operationOf(name string) *Operation {
	for i := range all {
		if all[i].Name == name {
			return &all[i]
		}
	}
	return nil
}

// record is satisfied by *T when that is a record.
type record[T any] interface {
	*T
	wire.Record
}

// operation makes one from what does it.
func operation[I, A any, PI record[I], PA record[A]](name string, run func(*I, []finding.Finding) (*A, []finding.Finding)) Operation {
	return Operation{
		Name:   name,
		Input:  func() wire.Record { return PI(new(I)) },
		Answer: func() wire.Record { return PA(new(A)) },
		run: func(in wire.Record, read []finding.Finding) (wire.Record, []finding.Finding) {
			answer, list := run((*I)(in.(PI)), read)
			if answer == nil {
				return nil, list
			}
			return PA(answer), nil
		},
	}
}

// tolerant makes an operation judge by itself what reading its input found; others
// are not done when that refuses.
func tolerant(o Operation) Operation {
	o.tolerant = true
	return o
}

// calculation makes the operation of a calculation, whose form is its input.
func calculation(c calc.Calculation) Operation {
	return Operation{
		Name:   c.Op,
		Input:  func() wire.Record { return c.Input() },
		Answer: func() wire.Record { return c.Answer() },

		tolerant: true,
		run: func(in wire.Record, read []finding.Finding) (wire.Record, []finding.Finding) {
			answer, list := c.Calculate(in.(*calc.Form), read)
			if answer == nil {
				return nil, list
			}
			return answer, nil
		},
	}
}
