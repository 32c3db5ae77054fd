package due_test

import (
	"testing"

	"tidysump/internal/due"
)

// Common practice, no source: three jobs or 30 days.
func TestUnsaved(t *testing.T) {
	at := func(days ...string) []string {
		for i, day := range days {
			if day != "" {
				days[i] = "2026-" + day + "T10:00:00.000Z"
			}
		}
		return days
	}
	noon := func(day string) string {
		if day == "" {
			return ""
		}
		return "2026-" + day + "T12:00:00.000Z"
	}
	for _, c := range []struct {
		name               string
		finished           []string
		backup, later, now string
		count              int
		remind             bool
	}{
		{"no job", nil, "", "", "11-30", 0, false},
		{"open jobs only", at("", "", ""), "", "", "11-30", 0, false},
		{"two jobs of late", at("11-20", "11-21"), "", "", "11-22", 2, false},
		{"three jobs", at("11-20", "11-21", "11-21"), "", "", "11-22", 3, true},
		{"three jobs, backed up", at("11-20", "11-21", "11-21"), "11-21", "", "11-22", 0, false},
		{"one more than the backup", at("11-20", "11-22"), "11-21", "", "11-23", 1, false},
		{"one job, 33 days ago", at("10-20"), "", "", "11-22", 1, true},
		{"one job, 29 days ago", at("10-20"), "", "", "11-18", 1, false},
		{"nothing new in 30 days", at("09-20"), "10-01", "", "11-22", 0, false},
		{"one new job, the backup 30 days old", at("11-21"), "10-01", "", "11-22", 1, true},
		{"put off", at("11-20", "11-21", "11-21"), "", "11-21", "11-22", 3, false},
		{"put off, 30 days ago", at("10-20"), "", "10-21", "11-25", 1, true},
		{"put off before the backup", at("11-20", "11-20", "11-20"), "11-01", "10-21", "11-22", 3, true},
		{"put off, and three more since", at("11-01", "11-20", "11-20", "11-20"), "", "11-19", "11-22", 4, true},
	} {
		count, remind := due.Unsaved(c.finished, noon(c.backup), noon(c.later), noon(c.now))
		if count != c.count || remind != c.remind {
			t.Errorf("%s: %d unsaved, reminds %v; want %d, %v", c.name, count, remind, c.count, c.remind)
		}
	}
}
