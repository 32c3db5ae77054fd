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

// Whose odometer nobody has read for a month is asked for, the one that is due first; once a
// month, and not of a bike of which no day is known.
func TestAskedAgain(t *testing.T) {
	for _, c := range []struct {
		name         string
		read, remind []string
		asked        string
		want         int
	}{
		{"none", nil, nil, "", -1},
		{"read a month ago", []string{"2026-10-31"}, []string{"2027-03-01"}, "", 0},
		{"read four weeks ago", []string{"2026-11-02"}, []string{"2027-03-01"}, "", -1},
		{"due first", []string{"2026-05-01", "2026-06-01", "2026-11-29"}, []string{"2027-03-01", "2027-02-01", "2026-12-01"}, "", 1},
		{"asked lately", []string{"2026-05-01"}, []string{"2027-03-01"}, "2026-11-10", -1},
		{"asked long ago", []string{"2026-05-01"}, []string{"2027-03-01"}, "2026-10-10", 0},
		{"asked by a clock ahead", []string{"2026-05-01"}, []string{"2027-03-01"}, "2029-10-10", 0},
		{"never read", []string{""}, []string{"2027-03-01"}, "", -1},
		{"never due", []string{"2026-05-01"}, []string{""}, "", -1},
		{"no days", []string{"soon"}, []string{"2027-03-01"}, "long ago", -1},
	} {
		if got := due.AskedAgain(c.read, c.remind, "2026-11-30", c.asked); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}
