//go:build js && wasm

// Command wasm hands the page's calls to the core. It exports three functions,
// which belong together: the page asks for room, writes there the operation's
// name and its input, one after the other, calls, and reads the answer. (Values
// of syscall/js in their place cost the core 19 kB more.)
package main

import (
	"unsafe"

	"tidysump/internal/core"
)

// in and out hold what goes to and fro: the collector must not take it before
// the page has read it.
var in, out []byte

// room gives the address of so many bytes for the next call.
//
//go:wasmexport room
func room(size int32) unsafe.Pointer {
	in = make([]byte, size)
	return unsafe.Pointer(unsafe.SliceData(in))
}

// call runs the operation whose name is the first bytes of the room on the rest
// of it, and gives the length of the answer. It doesn't panic, as core.Call
// doesn't.
//
//go:wasmexport call
func call(name int32) int32 {
	out = core.Call(string(in[:name]), in[name:])
	in = nil
	return int32(len(out))
}

// answer gives the address of the last call's answer.
//
//go:wasmexport answer
func answer() unsafe.Pointer { return unsafe.Pointer(unsafe.SliceData(out)) }

func main() {
	select {} // the program waits for calls
}
