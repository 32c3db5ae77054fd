package bolt_test

import (
	"testing"

	"tidysump/internal/bolt"
)

// FuzzParseThread: what is taken for a thread has a believable size.
func FuzzParseThread(f *testing.F) {
	for _, text := range []string{"M12x1.5", "M6", "3/4-16 UNF", "m 14 × 1,5", "M1e1x1", "1/0-1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		thread, ok := bolt.ParseThread(text)
		if ok && !(thread.Diameter >= 2 && thread.Diameter <= 60 && thread.Pitch >= 0.25 && thread.Pitch < thread.Diameter) {
			t.Fatalf("ParseThread(%q) = %+v", text, thread)
		}
	})
}
