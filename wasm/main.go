//go:build js && wasm

// Command wasm hands the page's calls to the core. It exports functions that
// belong together: the page asks for room, writes there the operation's name and
// its input, one after the other, calls, reads the answer, and lets the core rest.
// (Values of syscall/js in their place cost the core 19 kB more.)
package main

import (
	"runtime"
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
	op := string(in[:name])
	if large = op == "read-page"; large {
		setGCPercent(seldom)
		defer setGCPercent(usual)
	}
	out = core.Call(op, in[name:])
	in = nil
	return int32(len(out))
}

// large is whether the last call was one that makes much at once and keeps none of it.
// While a collection goes on each pointer that is written costs several times as much, and
// 100 kB of a manual took a third longer for it: within such a call there is none, unless
// what it makes is several times what the program holds (some 20 MB), and one after it.
var large bool

// By how many percent of what is held memory grows until the next collection.
const (
	usual  = 100
	seldom = 1200
)

// setGCPercent is debug.SetGCPercent, which would bring fmt and os along.
//
//go:linkname setGCPercent runtime/debug.setGCPercent
func setGCPercent(percent int32) (before int32)

// answer gives the address of the last call's answer.
//
//go:wasmexport answer
func answer() unsafe.Pointer { return unsafe.Pointer(unsafe.SliceData(out)) }

// rest lets a collection that began in a call come to its end, whose answer was read:
// nothing else would while nothing is called, and all that later calls ask for would
// count as used meanwhile. The program's memory never shrinks: 20 calls took 400 MB
// (measured). A whole collection (runtime.GC) would weigh 1 kB more.
//
//go:wasmexport rest
func rest() {
	out = nil
	if large {
		in = make([]byte, 64<<10) // what is so large begins a collection that is due
		in, large = nil, false
	}
	for range 3 { // it marks in several turns
		runtime.Gosched()
	}
}

func main() {
	select {} // the program waits for calls
}
