package specs

import (
	_ "embed"
	"fmt"
	"strings"
)

// Ops describes the operations of the one door, with examples.
//
//go:embed ops.md
var Ops string

// Example is an operation's input and what its answer holds: a pair of blocks of
// ops.md, "```json in <op>" and "```json out".
type Example struct {
	Heading string // under which it stands
	Op      string
	In, Out string // JSON
}

// Examples gives the examples of Ops in their order.
func Examples() []Example {
	list, err := examples(Ops)
	if err != nil {
		panic(err) // the text is embedded: a test has read it
	}
	return list
}

func examples(doc string) (list []Example, err error) {
	var e Example
	var block *strings.Builder
	for line := range strings.Lines(doc) {
		text := strings.TrimSpace(line)
		op, in := strings.CutPrefix(text, "```json in ")
		switch {
		case block != nil && text == "```":
			if e.In == "" {
				e.In = strings.TrimSpace(block.String())
			} else {
				e.Out = strings.TrimSpace(block.String())
				list = append(list, e)
				e.In, e.Out = "", ""
			}
			block = nil
		case block != nil:
			block.WriteString(line)
		case strings.HasPrefix(text, "## "):
			e.Heading = strings.TrimPrefix(text, "## ")
		case in && e.In == "":
			e.Op, block = op, &strings.Builder{}
		case text == "```json out" && e.In != "":
			block = &strings.Builder{}
		case strings.HasPrefix(text, "```json"):
			return nil, fmt.Errorf("%s: block %q is out of order", e.Heading, text)
		}
	}
	if e.In != "" || block != nil {
		return nil, fmt.Errorf("%s: an example has no answer", e.Heading)
	}
	return list, nil
}
