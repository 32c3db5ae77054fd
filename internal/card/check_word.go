package card

import (
	"strconv"

	"tidysump/internal/finding"
)

// word checks an id out of a fixed list; empty means not known.
func (c *checker) word(where, got string, list ...string) {
	if got != "" {
		c.oneOf(where, got, list...)
	}
}

// oneOf checks an id that must be there.
func (c *checker) oneOf(where, got string, list ...string) {
	if !oneOf(got, list...) {
		c.add(finding.Refuse, "unknown-word", where, "text", finding.Clip(got))
	}
}

func (c *checker) nth(where string, n int) {
	if n < 0 || n > 20 {
		c.add(finding.Refuse, "bad-count", where, "value", strconv.Itoa(n))
	}
}

func (c *checker) refers(where, id string, known map[string]bool) {
	if !known[id] {
		c.add(finding.Refuse, "unknown-id", where, "text", finding.Clip(id))
	}
}

func oneOf(s string, list ...string) bool {
	for _, l := range list {
		if s == l {
			return true
		}
	}
	return false
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
