// Package slim makes a WebAssembly program that Go built smaller, for a page in
// which nobody reads the trace of a crash.
//
// What it takes out is written down nowhere but in Go's own sources and may change
// with any minor version of Go. It therefore works only on programs of the versions
// in Seen, checks what it finds, and gives an error that says what to do in place of
// a program that may be wrong. Patch releases don't change the layout (they mend
// faults), so Seen names minor versions.
//
// Two tests hold it: one here runs a slim program that recovers, collects garbage
// and grows its stacks; one of package server runs every example of specs/ops.md
// through the slim core and compares the answers with the native ones, byte for
// byte. Both use the Go they are run with: to add a version to Seen, add it, and
// run them with it.
package slim
