package main

import (
	"math"
	"runtime"
	"runtime/debug"
	"testing"
)

func TestLimitMemory(t *testing.T) {
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(-1))
	own := int64(1+runtime.GOMAXPROCS(0)) << 27
	for _, c := range []struct {
		name     string
		flag     int
		variable string
		want     int64
	}{
		{"by itself", 0, "", own},
		{"by the flag", 50, "", 50 << 20},
		{"by Go's own variable", 0, "1GiB", math.MaxInt64}, // which Go has read before
		{"by the flag, against the variable", 50, "1GiB", 50 << 20},
		{"less than nothing", -1, "", math.MaxInt64},
	} {
		debug.SetMemoryLimit(math.MaxInt64)
		t.Setenv("GOMEMLIMIT", c.variable)
		err := limitMemory(c.flag)
		if got := debug.SetMemoryLimit(-1); got != c.want || (err != nil) != (c.flag < 0) {
			t.Errorf("%s: %d (%v), want %d", c.name, got, err, c.want)
		}
	}
}
