package slim

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
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
	word(0, 20, 5, 68, 0)                      // entry and record of each, and the end
	word(0, 0, 0, 0, 1, 4, 7, 1, 9, 33, 0, 1)  // stack at 1, file at 4, line at 7, one value more at 1
	word(5, 13, 0, 0, 1, 1, 4, 1, 9, 44, 0, 0) // stack at 1, file at 1, line at 4, one value more at 0
	return table
}

// program makes a WebAssembly program of two functions and one data segment at 1024,
// by this version of Go.
func program(version string, data []byte) []byte {
	return programOf(version, data, "\x00\x01\x01\x01\x01\x01\x0b", "\x00\x01\x01\x0b")
}

func programOf(version string, data []byte, functions ...string) []byte {
	sized := func(parts ...string) string {
		body := strings.Join(parts, "")
		return string(binary.AppendUvarint(nil, uint64(len(body)))) + body
	}
	segment := "\x00\x41\x80\x08\x0b" + sized(string(data))
	producers := sized("producers") + "\x02" + sized("processed-by") + "\x01" + sized("other") + sized("9") +
		sized("language") + "\x01" + sized("Go") + sized("go"+version)
	code := string(rune(len(functions)))
	for _, body := range functions {
		code += sized(body)
	}
	return []byte("\x00asm\x01\x00\x00\x00" + "\x0a" + sized(code) + "\x0b" + sized("\x01", segment) + "\x00" + sized(producers))
}

const (
	names = "runtime.main\x00reflect.call\x00main.work[go.shape.int]\x00internal/runtime/maps.grow\x00x.y\x00"
	// Both functions' names as they are left, one after the other, then nothing.
	shortened = "\x00runtime.-\x00reflect.-\x00"
)

func TestProgram_Table(t *testing.T) {
	in := program("1.26.8", append([]byte("before "), twoFunctions(names)...))
	before := bytes.Clone(in)
	table := twoFunctions(shortened + strings.Repeat("\x00", len(names)-len(shortened)))
	start := headerSize + len(names)
	end := len(table) - 20 - 48 - 48
	values := table[end-14 : end]
	clear(table[start : end-14]) // unit and files
	clear(values[4:])            // the tables at 4 and 7; the one at 1 tells the stack
	records := table[end+20:]
	for n, name := range []uint32{1, 11} {
		record := records[48*n:]
		binary.LittleEndian.PutUint32(record[nameAt:], name)
		clear(record[fileValues:valueCount])
		clear(record[unitAt : startLine+4])
		clear(record[firstValues : firstValues+4]) // where it may be stopped
	}
	want := program("1.26.8", append([]byte("before "), table...))
	if got, err := Program(in); err != nil || !bytes.Equal(got, want) {
		t.Errorf("%q, %v\nwant %q", got, err, want)
	}
	if !bytes.Equal(in, before) {
		t.Error("the program itself was changed")
	}
}

// A function that only prints traces, or that can't come about in a page, is a stub,
// whatever calls it; what is asked whether there is something to print stays, and so does
// what only begins like one of them.
func TestProgram_Stubs(t *testing.T) {
	const whole, stubbed = "\x00\x01\x01\x0b", "\x00\x00\x0b"
	for second, want := range map[string]string{
		"runtime.tracebk": whole, "runtime.printnl": stubbed, "runtime.printlo": stubbed, "runtime.(*prof)": whole,
		"runtime.dump123": stubbed, "runtime.showfra": whole, "reflect.printnl": whole, "main.printnl.1.": whole,
		"runtime.cgocall": stubbed, "runtime.mexit.x": stubbed, "runtime.newmark": whole, "runtime.allocmc": whole,
	} {
		table := twoFunctions("runtime.main\x00" + second + "\x00")
		got, err := Program(program("1.26.8", table))
		if err != nil || !bytes.Contains(got, []byte(string(rune(len(want)))+want+"\x0b")) {
			t.Errorf("%s: %q, %v; want the body %q", second, got, err, want)
		}
	}
}

func TestProgram_Versions(t *testing.T) {
	for version, known := range map[string]bool{
		"1.26.8": true, "1.26.99": true, "1.26": true, "1.26rc2": true, "1.27-devel_0a1b2c": true,
		"1.2.6": false, "1.25.9": false, "1.260.1": false, "2.26.1": false, "1.99.1": false, "": false,
	} {
		_, err := Program(program(version, twoFunctions(names)))
		if known != (err == nil) || err != nil && !strings.Contains(err.Error(), "to Seen") {
			t.Errorf("Go %q: %v", version, err)
		}
	}
}

// What is no such program, is cut off, or has a table that is not as expected is
// refused, and never changed.
func TestProgram_Refused(t *testing.T) {
	whole := program("1.26.8", twoFunctions(names))
	refused := func(what string, program []byte, want string) {
		t.Helper()
		before := bytes.Clone(program)
		if got, err := Program(program); err == nil || got != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %q, %v; want an error with %q", what, got, err, want)
		}
		if !bytes.Equal(program, before) {
			t.Errorf("%s: the program itself was changed", what)
		}
	}
	refused("nothing", nil, "not a WebAssembly program")
	refused("text", []byte("\x00asm\x01\x00\x00\x00 and so on"), "not a WebAssembly program")
	refused("no table", bytes.Replace(whole, tableMark, make([]byte, 8), 1), "isn't where it is expected")
	refused("another language", bytes.Replace(whole, []byte("\x02Go"), []byte("\x02Ho"), 1), "which version of Go")
	for cut := range whole {
		refused(fmt.Sprint("cut off at ", cut), whole[:cut], "")
	}
	for _, at := range []int{functionCount, nameTable, unitTable, valueTable, lineTable} {
		for _, v := range []uint64{0, 1 << 20, 1 << 40, ^uint64(0)} {
			table := twoFunctions(names)
			binary.LittleEndian.PutUint64(table[at:], v)
			refused(fmt.Sprintf("%d at %d", v, at), program("1.26.8", table), "a layout that slimming doesn't know")
		}
	}
	for _, functions := range [][]string{{"\x00\x0b"}, {"\x00\x0b", "\x00\x0b", "\x00\x0b"}} {
		refused(fmt.Sprint(len(functions), " functions"), programOf("1.26.8", twoFunctions(names), functions...), "aren't those of the table")
	}
	records := len(twoFunctions(names)) - 48 - 48
	for at, want := range map[int]string{
		entry: "function 1 has two entries", nameAt: "the name of function 1",
		stackValues: "a table of values of function 1", fileValues: "a table of values of function 1",
		lineValues: "a table of values of function 1", firstValues: "a table of values of function 1",
	} {
		table := twoFunctions(names)
		table[records+48+at] = 78
		refused(want, program("1.26.8", table), want)
	}
}
