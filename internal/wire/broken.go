package wire

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"tidysump/internal/finding"
)

// brokenAt says that a text is no JSON from there on: in which line, counted from 1,
// and what stands there, with what is just before it. A text that breaks off at its
// end has nothing there.
func brokenAt(text string, at int) []finding.Finding {
	const before = 12 // bytes
	head, tail := text[:at], text[at:]
	ends := strings.TrimSpace(tail) == ""
	if ends {
		head = strings.TrimSpace(head)
	}
	line := strconv.Itoa(1 + strings.Count(head, "\n"))
	if ends {
		return finding.Refusal("not-json-end", "/", "line", line)
	}
	head = head[strings.LastIndexByte(head, '\n')+1:]
	if long := len(head) - before; long > 0 {
		for !utf8.RuneStart(head[long]) && long < len(head)-1 {
			long++
		}
		head = head[long:]
	}
	tail, _, _ = strings.Cut(tail, "\n")
	return finding.Refusal("not-json", "/", "line", line, "near", finding.Clip(head+tail))
}
