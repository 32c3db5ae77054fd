package core_test

import (
	"bytes"
	"encoding/json"
	"slices"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

var allOps = append(operationNames(), "no-such-op")

// nth gives the place of an operation among them.
func nth(op string) uint8 { return uint8(slices.Index(allOps, op)) }

// FuzzDo: whatever comes in, the answer is JSON with "ok" or with findings, and
// the core never fails.
func FuzzDo(f *testing.F) {
	for _, text := range specs.Cards() {
		in := slices.Concat([]byte(`{"card":`), text, []byte(`,"events":[{"id":"a","time":"2026-11-25T10:09:01.000Z","kind":"done","step":"identify"}]}`))
		f.Add(nth("replay"), in)
		f.Add(nth("plan"), slices.Concat([]byte(`{"card":`), text, []byte(`}`)))
	}
	for _, e := range specs.Examples() {
		f.Add(nth(e.Op), []byte(e.In))
	}
	f.Add(nth("fault"), slices.Concat([]byte(`{"id":"drop-plug","answers":{"returns":"damp"},"hand":["spanner"],"table":`), specs.Faults, []byte(`}`)))
	f.Fuzz(func(t *testing.T, n uint8, in []byte) {
		op := allOps[int(n)%len(allOps)]
		out, outcome := core.Do(op, in)
		if outcome == core.Crashed {
			t.Fatalf("%s(%q) crashed", op, in)
		}
		var answer map[string]json.RawMessage
		if err := json.Unmarshal(out, &answer); err != nil {
			t.Fatalf("%s(%q) answers %q: %v", op, in, out, err)
		}
		if _, ok := answer["ok"]; ok != (outcome == core.OK) || len(answer) != 1 {
			t.Fatalf("%s(%q) ends with %v and answers %q", op, in, outcome, out)
		}
	})
}

// A body of 10 MB, a megabyte of open brackets, a number beyond all numbers, a
// name given twice: each is reported in one finding, and at once.
func TestDo_HostileSizes(t *testing.T) {
	tests := []struct {
		name, code string
		in         []byte
	}{
		{"10 MB of blanks", "too-large", bytes.Repeat([]byte(" "), 10<<20)},
		{"open brackets", "not-json-end", bytes.Repeat([]byte("["), 1<<20)},
		{"closed brackets", "wrong-type", slices.Concat([]byte(`{"text":`), bytes.Repeat([]byte("["), 4<<20-10), bytes.Repeat([]byte("]"), 4<<20-10), []byte("}"))},
		{"commas", "too-much", slices.Concat([]byte(`{"text":[0`), bytes.Repeat([]byte(",0"), 1<<20), []byte("]}"))},
		{"commas too deep", "wrong-type", slices.Concat([]byte(`{"text":`), bytes.Repeat([]byte("["), 40), []byte("0"), bytes.Repeat([]byte(",0"), 1<<20), bytes.Repeat([]byte("]"), 40), []byte("}"))},
		{"a text of 1 MB", "text-too-long", slices.Concat([]byte(`{"text":"`), bytes.Repeat([]byte("x"), 1<<20-20), []byte(`"}`))},
		{"a name twice", "name-twice", []byte(`{"text":"1 L","text":"2 L"}`)},
		{"not UTF-8", "not-json", []byte("{\"text\":\"\xff\"}")},
		{"cut off", "not-json-end", []byte(`{"text":"1 L"`)},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			out := core.Call("convert", tt.in)
			var answer struct{ Findings []struct{ Code string } }
			if err := json.Unmarshal(out, &answer); err != nil {
				t.Fatal(err)
			}
			if len(answer.Findings) != 1 || answer.Findings[0].Code != tt.code {
				t.Errorf("got %s, want one finding %q", out, tt.code)
			}
		})
	}
}
