// Package core is the one door to the program: an operation's name and JSON
// in, JSON out. The WebAssembly core, the server and the tests all use it.
//
// The answer is {"ok":...} or {"findings":[...]}. The operations are described
// in specs/ops.md, whose examples are tests. core holds no logic but decode,
// call and encode.
package core

import (
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// MaxInput is the most bytes an operation takes.
const MaxInput = 1 << 20

// Outcome says how a call ended, for a caller that has statuses of its own.
type Outcome int

// The outcomes.
const (
	OK        Outcome = iota // the answer holds "ok"
	UnknownOp                // no operation of that name
	Malformed                // the input is not JSON
	Refused                  // the input can be read but not used
	TooLarge                 // the input is longer than MaxInput
	Crashed                  // the program's own fault, caught
)

// operation decodes its input, works and gives what to answer: a record, or
// the findings that refuse.
type operation func(in []byte) (wire.Record, []finding.Finding)

var operations = [...]struct {
	name string
	run  operation
}{
	{"bill", bill},
	{"bill-lines", billLines},
	{"cards", cards},
	{"due", dueAgain},
	{"calendar", calendarText},
	{"csv", csvText},
	{"check-card", checkCard},
	{"fault", judgeFault},
	{"forms", forms},
	{"gauge", trueScale.do},
	{"plan", plan},
	{"read-entry", readEntry},
	{"replay", replay},
	{"unsaved", unsaved},
}

// operationOf gives the operation or calculation of that name, nil when there
// is none.
func operationOf(op string) operation {
	for i := range operations {
		if operations[i].name == op {
			return operations[i].run
		}
	}
	for i := range calculations {
		if calculations[i].op == op {
			return calculations[i].do
		}
	}
	return nil
}

// Call runs one operation. It never panics and never returns nothing.
func Call(op string, in []byte) []byte {
	out, _ := Do(op, in)
	return out
}

// Do is Call that also says how the call ended.
func Do(op string, in []byte) (out []byte, outcome Outcome) {
	defer func() {
		if recover() != nil {
			out, outcome = refuse(finding.Finding{Code: "core-crashed"}), Crashed
		}
	}()
	run := operationOf(op)
	if run == nil {
		return refuse(finding.Finding{Code: "unknown-op", Values: finding.Values("op", clip(op))}), UnknownOp
	}
	if len(in) > MaxInput {
		return refuse(finding.Finding{Code: "too-large", Values: finding.Values("most", "1 MiB")}), TooLarge
	}
	answer, list := run(in)
	if answer == nil {
		return wire.Write(&failure{list}), outcomeOf(list)
	}
	return wire.Write(&success{answer}), OK
}

func outcomeOf(list []finding.Finding) Outcome {
	if len(list) > 0 && (list[0].Code == "not-json" || list[0].Code == "name-twice") {
		return Malformed
	}
	return Refused
}

func refuse(f finding.Finding) []byte {
	f.Where, f.Grade = "/", finding.Refuse
	return wire.Write(&failure{[]finding.Finding{f}})
}

// clip keeps a foreign name short enough for a sentence, and fit for JSON.
func clip(s string) string {
	s = strings.ToValidUTF8(s, "\uFFFD")
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

type success struct{ answer wire.Record }

func (s *success) Members(m *wire.Members) { m.Object("ok", s.answer) }

type failure struct{ list []finding.Finding }

func (f *failure) Members(m *wire.Members) { wire.Findings(m, "findings", &f.list) }
