// Command palette writes PNGs again with a palette, where that makes them smaller:
//
//	go run ./internal/site/palette static/icons/*.png
//
// It runs when the icons are drawn, so that the build takes them as they are.
package main

import (
	"fmt"
	"os"
)

func main() {
	for _, path := range os.Args[1:] {
		if err := rewrite(path); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
}

func rewrite(path string) error {
	body, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	return os.WriteFile(path, smaller(body), 0o644)
}
