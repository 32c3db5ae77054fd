package line_test

import "testing"

// BenchmarkRead reads one line, as long as people say them.
func BenchmarkRead(b *testing.B) {
	for b.Loop() {
		if r := read("25 Nm, wrench with 60 mm adapter, scale 10 to 60 Nm, grip 300 mm"); r.Op == "" {
			b.Fatal("not read")
		}
	}
}
