package site

import (
	"bytes"
	"encoding/binary"
	"testing"
)

// twoFunctions is a table of two functions: their names, a unit, two files, tables
// of values, and the records. The first value table tells the stack of both and the
// file of the second; the others tell files and lines.
func twoFunctions(names string) (table []byte) {
	const units, files = "unit", "file.go\x00other.go\x00"
	values := []byte{0, 4, 8, 2, 5, 0, 2, 5, 0, 6, 1, 2, 3, 0} // at 1, 4 and 7 tables begin
	at := func(place int, v uint64) { binary.LittleEndian.PutUint64(table[place:], v) }
	table = append(bytes.Clone(tableMark), make([]byte, headerSize-len(tableMark))...)
	at(functionCount, 2)
	at(nameTable, uint64(len(table)))
	table = append(table, names...)
	at(unitTable, uint64(len(table)))
	table = append(table, units+files...)
	at(valueTable, uint64(len(table)))
	table = append(table, values...)
	at(lineTable, uint64(len(table)))
	word := func(list ...uint32) {
		for _, v := range list {
			table = binary.LittleEndian.AppendUint32(table, v)
		}
	}
	word(0, 20, 0, 68, 0)                     // entry and record of each, and the end
	word(0, 0, 0, 0, 1, 4, 7, 1, 9, 33, 0, 1) // stack at 1, file at 4, line at 7, one value more at 1
	word(0, 0, 0, 0, 1, 1, 4, 0, 9, 44, 0)    // stack at 1, file at 1, line at 4
	return table
}

// program makes a WebAssembly program of one data segment at 1024.
func program(data []byte) []byte {
	segment := append([]byte{0, 0x41, 0x80, 0x08, 0x0b}, binary.AppendUvarint(nil, uint64(len(data)))...)
	section := append(append([]byte{1}, segment...), data...)
	out := append([]byte("\x00asm\x01\x00\x00\x00"), 11)
	return append(binary.AppendUvarint(out, uint64(len(section))), section...)
}

const (
	names   = "runtime.main\x00reflect.call\x00main.work[go.shape.int]\x00internal/runtime/maps.grow\x00x.y\x00"
	blanked = "runtime.main\x00reflect.call\x00-----------------------\x00internal/runtime/maps.grow\x00---\x00"
)

func TestSlim(t *testing.T) {
	in := program(append([]byte("before "), twoFunctions(names)...))
	before := bytes.Clone(in)
	want := twoFunctions(blanked)
	start := headerSize + len(blanked)
	end := len(want) - 20 - 48 - 44
	values := want[end-14 : end]
	clear(want[start : end-14]) // unit and files
	clear(values[4:])           // the tables at 4 and 7; the one at 1 tells the stack
	records := want[end+20:]
	clear(records[fileValues:valueCount])
	clear(records[startLine : startLine+4])
	clear(records[48+fileValues : 48+valueCount])
	clear(records[48+startLine : 48+startLine+4])
	if got := slim(in); !bytes.Equal(got, program(append([]byte("before "), want...))) {
		t.Errorf("%q\nwant %q", got, program(append([]byte("before "), want...)))
	}
	if !bytes.Equal(in, before) {
		t.Error("the program itself was changed")
	}
}

// What is no such program, or is cut off, is left as it is.
func TestSlim_Others(t *testing.T) {
	whole := program(twoFunctions(names))
	others := [][]byte{nil, []byte("\x00asm"), bytes.Replace(whole, tableMark, make([]byte, 8), 1), []byte("\x00asm\x01\x00\x00\x00 and so on")}
	for cut := range whole {
		others = append(others, whole[:cut])
	}
	for _, at := range []int{functionCount, nameTable, unitTable, valueTable, lineTable} {
		for _, v := range []uint64{0, 1 << 20, 1 << 40, ^uint64(0)} {
			table := twoFunctions(names)
			binary.LittleEndian.PutUint64(table[at:], v)
			if at != functionCount || v > 0 {
				others = append(others, program(table))
			}
		}
	}
	for _, other := range others {
		if got := slim(other); !bytes.Equal(got, other) {
			t.Errorf("%q became %q", other, got)
		}
	}
}
