package wire_test

import (
	"bytes"
	"testing"

	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/wire"
)

// FuzzRead: any text is read or refused; what was read is written and read
// again to the same bytes.
func FuzzRead(f *testing.F) {
	f.Add([]byte(`{"id":"a","time":"2026-11-25T10:09:01.000Z","kind":"note","text":"x"}`))
	f.Add([]byte(`{"id":1,"kind":[{}],"text":null}`))
	f.Add([]byte(`[[[[`))
	f.Fuzz(func(t *testing.T, in []byte) {
		var first, second job.Event
		if finding.Refused(wire.Read(in, &first)) {
			return
		}
		text := wire.Write(&first)
		if list := wire.Read(text, &second); len(list) > 0 {
			t.Fatalf("%q was read, written as %q, and then %v", in, text, list)
		}
		if again := wire.Write(&second); !bytes.Equal(text, again) {
			t.Fatalf("%q is written as %q and then as %q", in, text, again)
		}
	})
}
