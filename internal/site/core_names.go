package site

import (
	"bytes"
	"encoding/binary"
	"errors"
	"strings"
)

// tableMark begins Go's table of functions (pcHeader of package runtime, as
// debug/gosym reads it): magic number, two zeros, the size of an instruction and
// that of a pointer on wasm.
var tableMark = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// nameless takes the names of functions out of a WebAssembly program made by Go:
// nothing but the trace of a crash, which nobody sees in a page, shows them, and
// compressed they weigh 6 kB. The runtime looks at the names of its own and of
// reflect's functions; they stay. A program in which the table isn't found where
// it should be is left as it is.
func nameless(program []byte) []byte {
	memory, err := dataSegments(program)
	at := bytes.Index(program, tableMark)
	base, ok := memory.address(at)
	if err != nil || !ok {
		return program
	}
	names := base + memory.number(program, base+32)
	end := base + memory.number(program, base+40)
	first, found := memory.offset(names)
	last, whole := memory.offset(end - 1)
	for padding := 0; !whole && padding < 64; padding++ {
		end--
		last, whole = memory.offset(end - 1)
	}
	if !found || !whole || last-first != int(end-1-names) {
		return program
	}
	out := bytes.Clone(program)
	for first <= last {
		name := out[first : last+1]
		if n := bytes.IndexByte(name, 0); n >= 0 {
			name = name[:n]
		}
		if !needed(string(name)) {
			copy(name, strings.Repeat("-", len(name)))
		}
		first += len(name) + 1
	}
	return out
}

func needed(name string) bool {
	for _, prefix := range []string{"runtime.", "internal/runtime", "reflect."} {
		if strings.HasPrefix(name, prefix) {
			return true
		}
	}
	return false
}

// segment is a run of bytes that the program has in memory when it starts.
type segment struct {
	address      uint64
	offset, size int // in the file
}

type segmentList []segment

func (l segmentList) address(offset int) (uint64, bool) {
	for _, s := range l {
		if offset >= s.offset && offset < s.offset+s.size {
			return s.address + uint64(offset-s.offset), true
		}
	}
	return 0, false
}

func (l segmentList) offset(address uint64) (int, bool) {
	for _, s := range l {
		if address >= s.address && address < s.address+uint64(s.size) {
			return s.offset + int(address-s.address), true
		}
	}
	return 0, false
}

// number reads a number of 8 bytes; what no segment has is zero, for runs of zeros
// are left out of the file.
func (l segmentList) number(program []byte, address uint64) (v uint64) {
	for i := range uint64(8) {
		if at, ok := l.offset(address + i); ok {
			v |= uint64(program[at]) << (8 * i)
		}
	}
	return v
}

var errNoWasm = errors.New("not a WebAssembly program as Go makes it")

// dataSegments lists the active segments of the data section (WebAssembly core
// specification, 5.5.14).
func dataSegments(program []byte) (list segmentList, err error) {
	const dataSection = 11
	r := &wasmReader{body: program, at: 8} // behind magic number and version
	for r.at < len(program) && r.err == nil {
		id, size := r.byte(), r.number()
		if id != dataSection {
			r.at += int(size)
			continue
		}
		for n := r.number(); n > 0 && r.err == nil; n-- {
			s := segment{}
			if r.byte() != 0 || r.byte() != 0x41 { // of memory 0, at an i32.const
				return nil, errNoWasm
			}
			s.address = r.number()
			if r.byte() != 0x0b { // end of the expression
				return nil, errNoWasm
			}
			s.size = int(r.number())
			s.offset = r.at
			if r.at += s.size; r.at > len(program) || s.size < 0 {
				return nil, errNoWasm
			}
			list = append(list, s)
		}
		return list, r.err
	}
	return nil, errNoWasm
}

// wasmReader reads bytes and LEB128 numbers.
type wasmReader struct {
	body []byte
	at   int
	err  error
}

func (r *wasmReader) byte() byte {
	if r.at < 0 || r.at >= len(r.body) {
		r.err = errNoWasm
		return 0
	}
	r.at++
	return r.body[r.at-1]
}

// number reads an unsigned number; addresses are signed in the format, and
// below 2 GiB in such a program.
func (r *wasmReader) number() uint64 {
	v, n := binary.Uvarint(r.body[min(r.at, len(r.body)):])
	if n <= 0 {
		r.err = errNoWasm
		return 0
	}
	r.at += n
	return v
}
