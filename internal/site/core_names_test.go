package site

import (
	"bytes"
	"encoding/binary"
	"testing"
)

// program makes a WebAssembly program of one data segment that holds Go's table
// of functions with these names.
func program(names string) []byte {
	table := append(bytes.Clone(tableMark), make([]byte, 64)...)
	binary.LittleEndian.PutUint64(table[32:], 72)
	binary.LittleEndian.PutUint64(table[40:], uint64(72+len(names)))
	data := append(append([]byte("before "), table...), names+"behind"...)
	segment := append([]byte{0, 0x41, 0x80, 0x08, 0x0b}, binary.AppendUvarint(nil, uint64(len(data)))...) // at 1024
	section := append(append([]byte{1}, segment...), data...)
	out := append([]byte("\x00asm\x01\x00\x00\x00"), 11)
	return append(binary.AppendUvarint(out, uint64(len(section))), section...)
}

func TestNameless(t *testing.T) {
	const before = "runtime.main\x00reflect.call\x00main.work[go.shape.int]\x00internal/runtime/maps.grow\x00x.y\x00"
	const after = "runtime.main\x00reflect.call\x00-----------------------\x00internal/runtime/maps.grow\x00---\x00"
	in := program(before)
	if got, want := nameless(in), program(after); !bytes.Equal(got, want) {
		t.Errorf("%q\nwant %q", got, want)
	}
	if !bytes.Equal(in, program(before)) {
		t.Error("the program itself was changed")
	}
}

// What is no such program is left as it is.
func TestNameless_Others(t *testing.T) {
	whole := program("a.b\x00")
	for _, other := range [][]byte{nil, []byte("\x00asm"), whole[:40], bytes.Replace(whole, tableMark, make([]byte, 8), 1), []byte("\x00asm\x01\x00\x00\x00 and so on")} {
		if got := nameless(other); !bytes.Equal(got, other) {
			t.Errorf("%q became %q", other, got)
		}
	}
}
