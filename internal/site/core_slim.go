package site

import (
	"bytes"
	"encoding/binary"
	"strings"
)

// slim takes out of a WebAssembly program made by Go what only the trace of a
// crash shows, which nobody sees in a page: the names of functions, and in which
// file and line their code stands. Compressed they weigh 48 kB. The runtime looks
// at the names of its own and of reflect's functions; they stay. A program in which
// the table of functions isn't as expected is left as it is.
func slim(program []byte) []byte {
	segments, err := dataSegments(program)
	if err != nil {
		return program
	}
	m := load(program, segments)
	if !m.slim() {
		return program
	}
	return m.store(program, segments)
}

// tableMark begins Go's table of functions (pcHeader of package runtime, as
// debug/gosym reads it): magic number, two zeros, the size of an instruction and
// that of a pointer on wasm.
var tableMark = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// Where the table's header has the number of functions, and the offsets of its
// parts.
const (
	functionCount = 8
	nameTable     = 32
	unitTable     = 40
	valueTable    = 56
	lineTable     = 64
	headerSize    = 72
)

// Where a function's record (_func of package runtime) has the offsets of its
// tables of values, and how many more follow.
const (
	stackValues = 16
	fileValues  = 20
	lineValues  = 24
	valueCount  = 28
	startLine   = 36
	firstValues = 44
)

// memory is the program's memory when it starts.
type memory []byte

// slim reports whether the table was found and slimmed.
func (m memory) slim() (done bool) {
	// A table that is not as expected leads outside of the memory.
	defer func() { done = recover() == nil && done }()
	base := bytes.Index(m, tableMark)
	if base < 0 || len(m) < base+headerSize {
		return false
	}
	part := func(at int) int { return base + int(binary.LittleEndian.Uint64(m[base+at:])) }
	names, units, values, lines := part(nameTable), part(unitTable), part(valueTable), part(lineTable)
	if !(base < names && names < units && units < values && values < lines) {
		return false
	}
	count := part(functionCount) - base
	if count < 0 || len(m[lines:]) < 8*count {
		return false
	}
	m[names:units].blank()
	m.lineless(count, values, lines)
	clear(m[units:values]) // which files belong to which unit, and their names
	return true
}

// blank puts a line in place of each name that nothing needs.
func (names memory) blank() {
	for len(names) > 0 {
		name := names
		if end := bytes.IndexByte(names, 0); end >= 0 {
			name = names[:end]
		}
		if !needed(string(name)) {
			copy(name, strings.Repeat("-", len(name)))
		}
		names = names[min(len(name)+1, len(names)):]
	}
}

func needed(name string) bool {
	for _, prefix := range []string{"runtime.", "internal/runtime", "reflect."} {
		if strings.HasPrefix(name, prefix) {
			return true
		}
	}
	return false
}

// lineless takes the files and lines out: the runtime reads an offset of zero as
// none. Functions share tables of values, so one that also tells what is needed,
// such as the height of the stack, stays.
func (m memory) lineless(count, values, lines int) {
	kept := map[int]bool{}
	var dropped []int
	for n := range count {
		record := m[lines+m.word(lines+8*n+4):]
		kept[record.word(stackValues)] = true
		for v := range record.word(valueCount) {
			kept[record.word(firstValues+4*v)] = true
		}
		dropped = append(dropped, record.word(fileValues), record.word(lineValues))
		clear(record[fileValues:valueCount])
		clear(record[startLine : startLine+4])
	}
	for _, at := range dropped {
		if !kept[at] {
			m[values+at : lines].wipeValues()
		}
	}
}

func (m memory) word(at int) int { return int(binary.LittleEndian.Uint32(m[at:])) }

// wipeValues clears the table of values that it begins with: pairs of numbers, of
// which a first one of zero ends it, but for the first of all (step of package
// runtime).
func (m memory) wipeValues() {
	at := 0
	for first := true; ; first = false {
		value, size := binary.Uvarint(m[at:])
		at += size
		if value == 0 && !first {
			break
		}
		_, size = binary.Uvarint(m[at:])
		at += size
	}
	clear(m[:at])
}
