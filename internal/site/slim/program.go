package slim

import (
	"bytes"
	"encoding/binary"
	"errors"
	"strings"
)

// Sections of a WebAssembly program (WebAssembly core specification, 5.5.2).
const (
	customSection = 0
	codeSection   = 10
	dataSection   = 11
)

var (
	errNoWasm    = errors.New("not a WebAssembly program as Go makes it")
	errNoVersion = errors.New("the program doesn't say which version of Go made it")
)

// sections are what slimming reads of a program, each with its place in the file.
type sections struct {
	code, data, producers reader
	codeAt                int // where the code section begins, with its head
}

// sectionsOf finds the code and the data section, and the custom section "producers", in which
// compilers name themselves (WebAssembly tool conventions).
func sectionsOf(program []byte) (*sections, error) {
	if !bytes.HasPrefix(program, []byte("\x00asm\x01\x00\x00\x00")) {
		return nil, errNoWasm
	}
	var s sections
	r := &reader{body: program, at: 8} // after magic number and version
	for r.at < len(program) && r.err == nil {
		head := r.at
		id, size := r.byte(), r.number()
		if size > len(program)-r.at {
			return nil, errNoWasm
		}
		section := reader{body: program[:r.at+size], at: r.at}
		switch id {
		case codeSection:
			s.code, s.codeAt = section, head
		case dataSection:
			s.data = section
		case customSection:
			if section.text() == "producers" {
				s.producers = section
			}
		}
		r.at += size
	}
	if r.err != nil || s.code.body == nil || s.data.body == nil {
		return nil, errNoWasm
	}
	return &s, nil
}

// version gives the version of Go that made the program: "1.26.8".
func (s *sections) version() (string, error) {
	r := s.producers
	for fields := r.number(); fields > 0 && r.err == nil; fields-- {
		field := r.text()
		for values := r.number(); values > 0 && r.err == nil; values-- {
			name, version := r.text(), r.text()
			if version, ok := strings.CutPrefix(version, "go"); ok && field == "language" && name == "Go" {
				return version, nil
			}
		}
	}
	return "", errNoVersion
}

// segment is a run of bytes that a program has in memory when it starts.
type segment struct{ address, offset, size int } // offset: in the file

// mostMemory is far more than the program has in memory at its start.
const mostMemory = 1 << 28

// segments lists the active segments of the data section (WebAssembly core
// specification, 5.5.14).
func (s *sections) segments() (list []segment, err error) {
	r := s.data
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
		if r.at += s.size; r.at > len(r.body) || s.address+s.size > mostMemory {
			return nil, errNoWasm
		}
		list = append(list, s)
	}
	return list, r.err
}

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

// reader reads bytes, LEB128 numbers and texts.
type reader struct {
	body []byte
	at   int
	err  error
}

func (r *reader) byte() byte {
	if r.at < 0 || r.at >= len(r.body) {
		r.err = errNoWasm
		return 0
	}
	r.at++
	return r.body[r.at-1]
}

// number reads an unsigned number; addresses are signed in the format, and
// below 2 GiB in such a program.
func (r *reader) number() int {
	v, n := binary.Uvarint(r.body[min(r.at, len(r.body)):])
	if n <= 0 || v > mostMemory {
		r.err = errNoWasm
		return 0
	}
	r.at += n
	return int(v)
}

// text reads a text, its length before it.
func (r *reader) text() string {
	size := r.number()
	if size > len(r.body)-r.at {
		r.err = errNoWasm
		return ""
	}
	r.at += size
	return string(r.body[r.at-size : r.at])
}
