package main

import (
	"errors"
	"os"
	"runtime"
	"runtime/debug"
)

const mebi = 1 << 20

// limitMemory says how much memory the program should do with; near it Go looks more
// often for what is no longer needed. 0 is what Go was told already (GOMEMLIMIT), else
// 128 MiB and as much again for each processor, each of which may have a large call in
// hand.
func limitMemory(mebibytes int) error {
	switch {
	case mebibytes < 0:
		return errors.New("-memory is less than nothing")
	case mebibytes > 0:
		debug.SetMemoryLimit(int64(mebibytes) * mebi)
	case os.Getenv("GOMEMLIMIT") == "":
		debug.SetMemoryLimit(int64(1+runtime.GOMAXPROCS(0)) * 128 * mebi)
	}
	return nil
}
