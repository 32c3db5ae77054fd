// Package core is the one door to the program: an operation's name and JSON
// in, JSON out. The WebAssembly core, the server and the tests all use it.
//
// The answer is {"ok":...} or {"findings":[...]}. The operations are described
// in specs/ops.md, whose examples are tests. core holds no logic but decode,
// call and encode.
package core

import (
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// MaxInput is the most bytes an operation takes: many jobs, or one of thousands of
// events.
const MaxInput = 8 << 20

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

// Call runs one operation. It never panics and never returns nothing.
func Call(op string, in []byte) []byte {
	out, _ := Do(op, in)
	return out
}

// Do is Call that also says how the call ended.
func Do(op string, in []byte) (out []byte, outcome Outcome) {
	defer func() {
		if recover() != nil {
			out, outcome = failed("core-crashed"), Crashed
		}
	}()
	o := operationOf(op)
	if o == nil {
		return failed("unknown-op", "op", finding.Clip(op)), UnknownOp
	}
	if len(in) > MaxInput {
		return failed("too-large", "most", "8 MB"), TooLarge
	}
	input := o.Input()
	list := wire.Read(in, input)
	var answer wire.Record
	if o.tolerant || !finding.Refused(list) {
		answer, list = o.run(input, list)
	}
	if answer == nil {
		return wire.Write(&failure{list}), outcomeOf(list)
	}
	return wire.Write(&success{answer}), OK
}

func outcomeOf(list []finding.Finding) Outcome {
	if malformed(list) {
		return Malformed
	}
	return Refused
}

// malformed reports whether what was read is no JSON.
func malformed(list []finding.Finding) bool {
	return len(list) > 0 && (list[0].Code == "not-json" || list[0].Code == "not-json-end")
}

func failed(code string, values ...string) []byte {
	return wire.Write(&failure{finding.Refusal(code, "/", values...)})
}

type success struct{ answer wire.Record }

func (s *success) Members(m *wire.Members) { m.Object("ok", s.answer) }

type failure struct{ list []finding.Finding }

func (f *failure) Members(m *wire.Members) { wire.Findings(m, "findings", &f.list) }
