//go:build js && wasm

// Command wasm hands the page's calls to the core. It registers one function,
// globalThis.tidysumpCall(op, json) -> json, and then waits for ever.
package main

import (
	"syscall/js"

	"tidysump/internal/core"
)

// crashed is the answer when the core panics all the same.
const crashed = `{"findings":[{"code":"core-crashed","where":"/","grade":"refuse","values":{}}]}`

func main() {
	js.Global().Set("tidysumpCall", js.FuncOf(call))
	select {}
}

// call never panics: an uncaught panic inside a callback ends the program and
// leaves the caller with undefined. What is no string reaches the core as
// syscall/js prints it ("<number: 1>"), which it refuses.
func call(_ js.Value, args []js.Value) (answer any) {
	defer func() {
		if recover() != nil {
			answer = crashed
		}
	}()
	return string(core.Call(args[0].String(), []byte(args[1].String())))
}
