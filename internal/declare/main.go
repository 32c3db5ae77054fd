// Command declare writes the types of the core's operations for the page, as
// TypeScript declares them: what each operation takes and answers, as the Go types
// name their members (wire.Describe), with the comments and words of the sources.
//
//	go run ./internal/declare > static/app/core/core.d.ts
//
// It is run in the program's folder. A number whose unit is not in units stops it.
package main

import (
	"fmt"
	"os"
)

func main() {
	text, err := declarations(".")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	os.Stdout.Write(text)
}

// declarations gives the whole file. root is the program's folder.
func declarations(root string) ([]byte, error) {
	src, err := readSources(root)
	if err != nil {
		return nil, err
	}
	c := collect(src)
	return c.print()
}
