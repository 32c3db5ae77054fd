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
	run func(in wire.Record, read []finding.Finding) (wire.Record, []finding.Finding)
}

// operations are all but the calculations.
var operations = [...]Operation{
	tolerant("bill-lines", billLines),
	tolerant("cards", cards),
	strict("due", dueAgain),
	strict("calendar", calendarText),
	strict("csv", csvText),
	tolerant("check-card", checkCard),
	strict("fault", judgeFault),
	strict("forms", forms),
	tolerant("plan", makePlan),
	strict("read-entry", readEntry),
	tolerant("replay", replay),
	strict("unsaved", unsaved),
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

// tolerant makes an operation that judges by itself what reading its input found.
func tolerant[I, A any, PI record[I], PA record[A]](name string, run func(*I, []finding.Finding) (*A, []finding.Finding)) Operation {
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

// strict makes an operation that is not done when reading its input found what
// refuses it.
func strict[I, A any, PI record[I], PA record[A]](name string, run func(*I) (*A, []finding.Finding)) Operation {
	return tolerant[I, A, PI, PA](name, func(in *I, read []finding.Finding) (*A, []finding.Finding) {
		if finding.Refused(read) {
			return nil, read
		}
		return run(in)
	})
}

// calculation makes the operation of a calculation, whose form is its input.
func calculation(c calc.Calculation) Operation {
	return Operation{
		Name:   c.Op,
		Input:  func() wire.Record { return c.Input() },
		Answer: func() wire.Record { return &calc.Answer{} },
		run: func(in wire.Record, read []finding.Finding) (wire.Record, []finding.Finding) {
			answer, list := c.Work(in.(*calc.Form), read)
			if answer == nil {
				return nil, list
			}
			return answer, nil
		},
	}
}
