package site

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// segment is a run of bytes that a program has in memory when it starts.
type segment struct{ address, offset, size int } // offset: in the file

// mostMemory is far more than the program has in memory at its start.
const mostMemory = 1 << 28

// load makes the program's memory; what no segment has is zero.
func load(program []byte, segments []segment) memory {
	size := 0
	for _, s := range segments {
		size = max(size, s.address+s.size)
	}
	m := make(memory, size)
	for _, s := range segments {
		copy(m[s.address:], program[s.offset:s.offset+s.size])
	}
	return m
}

// store gives the program with this memory in its segments.
func (m memory) store(program []byte, segments []segment) []byte {
	out := bytes.Clone(program)
	for _, s := range segments {
		copy(out[s.offset:s.offset+s.size], m[s.address:])
	}
	return out
}

var errNoWasm = errors.New("not a WebAssembly program as Go makes it")

// dataSegments lists the active segments of the data section (WebAssembly core
// specification, 5.5.14).
func dataSegments(program []byte) (list []segment, err error) {
	const dataSection = 11
	r := &wasmReader{body: program, at: 8} // behind magic number and version
	for r.at < len(program) && r.err == nil {
		id, size := r.byte(), r.number()
		if id != dataSection {
			r.at += size
			continue
		}
		for n := r.number(); n > 0 && r.err == nil; n-- {
			if r.byte() != 0 || r.byte() != 0x41 { // of memory 0, at an i32.const
				return nil, errNoWasm
			}
			s := segment{address: r.number()}
			if r.byte() != 0x0b { // end of the expression
				return nil, errNoWasm
			}
			s.size = r.number()
			s.offset = r.at
			if r.at += s.size; r.at > len(program) || s.address+s.size > mostMemory {
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
func (r *wasmReader) number() int {
	v, n := binary.Uvarint(r.body[min(r.at, len(r.body)):])
	if n <= 0 || v > mostMemory {
		r.err = errNoWasm
		return 0
	}
	r.at += n
	return int(v)
}
