package card

import (
	"slices"
	"strconv"

	"tidysump/internal/finding"
)

// word checks a word out of a fixed list; empty means not known.
func word[T ~string](c *checker, where string, got T, list []T) {
	if got != "" {
		needed(c, where, got, list)
	}
}

// needed checks a word that must be there.
func needed[T ~string](c *checker, where string, got T, list []T) {
	if !slices.Contains(list, got) {
		c.add(finding.Refuse, "unknown-word", where, "text", finding.Clip(string(got)))
	}
}

func (c *checker) nth(where string, n int) {
	if n < 0 || n > mostNth {
		c.add(finding.Refuse, "bad-count", where, "value", strconv.Itoa(n))
	}
}

func (c *checker) refers(where, id string, known map[string]bool) {
	if !known[id] {
		c.add(finding.Refuse, "unknown-id", where, "text", finding.Clip(id))
	}
}

// validID: lower-case letters, digits and hyphens, 1 to 60 of them.
func validID(id string) bool {
	if id == "" || len(id) > 60 {
		return false
	}
	for _, r := range id {
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-' {
			return false
		}
	}
	return true
}
