package slim

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"strings"
)

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

// Where a function's record (_func of package runtime) has its entry, its name,
// the offsets of its tables of values, and how many more follow.
const (
	entry       = 0
	nameAt      = 4
	stackValues = 16
	fileValues  = 20
	lineValues  = 24
	valueCount  = 28
	unitAt      = 32
	startLine   = 36
	firstValues = 44
)

// Which of the tables of values that follow tells at which instructions a function may
// be stopped, which nothing does on wasm; and which of its arguments a trace may show.
const (
	unsafePoint   = 0
	argumentsLive = 3
)

var (
	errTable = errors.New("the table of functions isn't where it is expected")
	errParts = errors.New("the parts of the table of functions are not in their order")
)

// memory is the program's memory when it starts.
type memory []byte

// table is Go's table of functions within a program's memory: where its parts
// begin.
type table struct {
	memory
	names, units, values, lines int
	count                       int // of functions
}

// slim takes out what nothing needs. It gives the number of functions, and which of
// them nothing needs.
func (m memory) slim() (count int, idle []int, err error) {
	defer func() { // a table that is not as expected leads outside of the memory
		if recover() != nil {
			err = errParts
		}
	}()
	t, err := m.table()
	if err != nil {
		return 0, nil, err
	}
	for n := range t.count {
		if err := t.check(n); err != nil {
			return 0, nil, err
		}
	}
	if idle, err = t.idle(); err != nil {
		return 0, nil, err
	}
	t.shortenNames()
	t.dropValues()
	clear(t.memory[t.units:t.values]) // which files belong to which unit, and their names
	return t.count, idle, nil
}

// table finds the table of functions.
func (m memory) table() (*table, error) {
	base := bytes.Index(m, tableMark)
	if base < 0 || len(m) < base+headerSize {
		return nil, errTable
	}
	part := func(at int) int { return base + int(binary.LittleEndian.Uint64(m[base+at:])) }
	t := &table{m, part(nameTable), part(unitTable), part(valueTable), part(lineTable), part(functionCount) - base}
	if !(base+headerSize <= t.names && t.names < t.units && t.units < t.values && t.values < t.lines && t.lines < len(m)) ||
		t.count <= 0 || t.count > (len(m)-t.lines)/8 {
		return nil, errParts
	}
	return t, nil
}

// record gives the record of the nth function, and all that follows it.
func (t *table) record(n int) memory { return t.memory[t.lines+t.word(t.lines+8*n+4):] }

// check holds what is said twice about the nth function against each other: its
// entry stands in the list of functions too, its name begins where another ended,
// and its tables of values lie where the values are.
func (t *table) check(n int) error {
	r := t.record(n)
	if r.word(entry) != t.word(t.lines+8*n) {
		return fmt.Errorf("function %d has two entries", n)
	}
	if name := t.names + r.word(nameAt); name >= t.units || name > t.names && t.memory[name-1] != 0 {
		return fmt.Errorf("the name of function %d is not where it is expected", n)
	}
	for _, at := range append(r.others(), r.word(fileValues), r.word(lineValues)) {
		if at >= t.lines-t.values {
			return fmt.Errorf("a table of values of function %d is not where it is expected", n)
		}
	}
	return nil
}

// others gives the offsets of a record's tables of values but those of files and
// lines.
func (record memory) others() []int {
	list := []int{record.word(stackValues)}
	for v := range record.word(valueCount) {
		list = append(list, record.word(firstValues+4*v))
	}
	return list
}

// shortenNames leaves of each name what the runtime asks for. Functions whose names come
// to the same share one.
func (t *table) shortenNames() {
	kinds := make([]string, t.count)
	for n := range kinds {
		kinds[n] = kind(t.name(t.record(n).word(nameAt)))
	}
	clear(t.memory[t.names:t.units])
	places, next := map[string]int{}, 1 // a name at 0 is none
	for n, name := range kinds {
		if _, found := places[name]; !found {
			places[name] = next
			next += copy(t.memory[t.names+next:t.units-1], name) + 1
		}
		binary.LittleEndian.PutUint32(t.record(n)[nameAt:], uint32(places[name]))
	}
}

// kind gives what the runtime asks for of a function's name: stkframe.go of package runtime
// looks for two whole ones.
func kind(name string) string {
	if name == "reflect.makeFuncStub" || name == "reflect.methodValueCall" {
		return name
	}
	for _, prefix := range []string{"runtime.", "internal/runtime/", "reflect."} {
		if strings.HasPrefix(name, prefix) {
			return prefix + "-"
		}
	}
	return "-"
}

// dropValues takes out the files and lines, where a function may be stopped, and which of
// its arguments are live: the runtime reads an offset of zero as none. Functions share
// tables of values, so one that also tells what is needed, such as the height of the
// stack, stays.
func (t *table) dropValues() {
	var dropped []int
	for n := range t.count {
		record := t.record(n)
		dropped = append(dropped, record.word(fileValues), record.word(lineValues))
		clear(record[fileValues:valueCount])
		clear(record[unitAt : startLine+4])
		for v := range record.word(valueCount) {
			if v == unsafePoint || v == argumentsLive {
				at := firstValues + 4*v
				dropped = append(dropped, record.word(at))
				clear(record[at : at+4])
			}
		}
	}
	kept := map[int]bool{}
	for n := range t.count {
		for _, at := range t.record(n).others() {
			kept[at] = true
		}
	}
	for _, at := range dropped {
		if !kept[at] {
			t.memory[t.values+at : t.lines].clearValues()
		}
	}
}

func (m memory) word(at int) int { return int(binary.LittleEndian.Uint32(m[at:])) }

// clearValues clears the table of values that it begins with: pairs of numbers, of
// which a first one of zero ends it, but for the first of all (step of package
// runtime).
func (m memory) clearValues() {
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
