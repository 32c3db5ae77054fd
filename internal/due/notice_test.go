package due_test

import (
	"testing"

	"tidysump/internal/due"
)

// Of the bikes whose day has come the first, and nobody is reminded twice within seven
// days.
func TestNotice(t *testing.T) {
	const now = "2026-11-28T12:00:00.000Z"
	days := func(list ...string) []string { return list }
	for _, c := range []struct {
		name            string
		days            []string
		notified, today string
		want            int
	}{
		{"no bike", nil, "", "2026-11-28", -1},
		{"tomorrow", days("2026-11-29"), "", "2026-11-28", -1},
		{"today", days("2026-11-28"), "", "2026-11-28", 0},
		{"the first of those that have come", days("2026-12-01", "2026-11-20", "2026-11-03", "2026-11-21"), "", "2026-11-28", 2},
		{"a bike without a day", days("", "2026-11-20"), "", "2026-11-28", 1},
		{"told six days ago", days("2026-11-20"), "2026-11-22T12:00:00.001Z", "2026-11-28", -1},
		{"told a week ago", days("2026-11-20"), "2026-11-21T12:00:00.000Z", "2026-11-28", 0},
		{"never told, by an old clock", days("2026-11-20"), "1970-01-01T00:00:00.000Z", "2026-11-28", 0},
		{"what was said is no time", days("2026-11-20"), "yesterday", "2026-11-28", 0},
	} {
		if got := due.Notice(c.days, c.today, c.notified, now); got != c.want {
			t.Errorf("%s: bike %d, want %d", c.name, got, c.want)
		}
	}
}
