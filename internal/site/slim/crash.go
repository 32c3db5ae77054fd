package slim

import (
	"encoding/binary"
	"errors"
	"slices"
	"strings"
)

var errCode = errors.New("the program's functions aren't those of the table of functions")

// stub is the body of a function without locals that does nothing but crash
// (WebAssembly core specification, 5.5.13: its size, no locals, unreachable, end).
var stub = []byte{3, 0, 0x00, 0x0b}

// forTraces are functions of package runtime that run only to print what the trace of
// a crash shows, or to profile and trace a running program, which nobody can turn on in
// a page: the beginnings of their names, with closures and methods. A program that
// would print them has died anyway; with them gone it dies without a word.
var forTraces = []string{
	"runtime.print", "runtime.traceback", "runtime.goroutineheader", "runtime.showframe", "runtime.showfuncinfo",
	"runtime.dump", "runtime.hexdump", "runtime.(*hexdumper).", "runtime.badPointer", "runtime.gcDumpObject",
	"runtime.(*mspan).reportZombies", "runtime.schedtrace", "runtime.(*profBuf).",
	"runtime.traceAdvance", "runtime.traceStack", "runtime.traceLocker.", "runtime.traceWriter.", "runtime.traceEventWriter.",
	"runtime.(*traceBuf).", "runtime.(*traceMap).", "runtime.(*traceStackTable).", "runtime.(*traceTypeTable).",
	"runtime.(*traceStringTable).", "runtime.(*traceRegionAlloc).",
}

// asked are those among them that are called to find out whether there is anything
// to print or to trace.
var asked = []string{"runtime.printlock", "runtime.printunlock", "runtime.traceLocker.ok"}

func isForTraces(name string) bool {
	starts := func(prefix string) bool { return strings.HasPrefix(name, prefix) }
	return slices.ContainsFunc(forTraces, starts) && !slices.ContainsFunc(asked, starts)
}

// tracing lists the functions for traces, by their places in the code section, where
// they stand as in the table: each has one entry, and these rise evenly.
func (t *table) tracing() (places []int, err error) {
	first := t.record(0).word(entry)
	step := t.record(min(1, t.count-1)).word(entry) - first
	for n := range t.count {
		r := t.record(n)
		if r.word(entry) != first+n*step {
			return nil, errCode
		}
		if isForTraces(t.name(r.word(nameAt))) {
			places = append(places, n)
		}
	}
	return places, nil
}

// name gives the name that begins at an offset.
func (t *table) name(at int) string {
	text := string(t.memory[t.names+at : t.units])
	name, _, _ := strings.Cut(text, "\x00")
	return name
}

// stubbed gives a program in which the functions at these places, in their order, are
// stubs. There are so many functions in its code section as the table has.
func (s *sections) stubbed(program []byte, count int, places []int) ([]byte, error) {
	r := s.code
	if r.number() != count {
		return nil, errCode
	}
	body := binary.AppendUvarint(nil, uint64(count))
	for n := range count {
		start := r.at
		size := r.number()
		if r.err != nil || size > len(r.body)-r.at {
			return nil, errCode
		}
		r.at += size
		if _, found := slices.BinarySearch(places, n); found {
			body = append(body, stub...)
		} else {
			body = append(body, program[start:r.at]...)
		}
	}
	if r.at != len(r.body) {
		return nil, errCode
	}
	out := append([]byte{}, program[:s.codeAt]...)
	out = binary.AppendUvarint(append(out, codeSection), uint64(len(body)))
	out = append(out, body...)
	return append(out, program[len(r.body):]...), nil
}
