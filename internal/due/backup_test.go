package due_test

import (
	"strconv"
	"strings"
	"testing"

	"tidysump/internal/due"
)

// Common practice, no source: three jobs or 30 days. A job is in a backup when all of
// its events are in files of this phone; that there was one later says nothing of it.
func TestUnsaved(t *testing.T) {
	// at makes jobs finished on those days, "" for one that is open; after "=" stands
	// how many of its ten events are in a backup.
	at := func(days ...string) (jobs []due.Kept) {
		for _, day := range days {
			day, saved, _ := strings.Cut(day, "=")
			k := due.Kept{Events: 10}
			if day != "" {
				k.Finished = "2026-" + day + "T10:00:00.000Z"
			}
			k.Saved, _ = strconv.Atoi(saved)
			jobs = append(jobs, k)
		}
		return jobs
	}
	noon := func(day string) string {
		if day == "" {
			return ""
		}
		return "2026-" + day + "T12:00:00.000Z"
	}
	for _, c := range []struct {
		name               string
		jobs               []due.Kept
		backup, later, now string
		count              int
		remind             bool
	}{
		{"no job", nil, "", "", "11-30", 0, false},
		{"open jobs only", at("", "", ""), "", "", "11-30", 0, false},
		{"two jobs of late", at("11-20", "11-21"), "", "", "11-22", 2, false},
		{"three jobs", at("11-20", "11-21", "11-21"), "", "", "11-22", 3, true},
		{"three jobs, backed up", at("11-20=10", "11-21=10", "11-21=10"), "11-21", "", "11-22", 0, false},
		{"one more than the backup", at("11-20=10", "11-22"), "11-21", "", "11-23", 1, false},
		{"one job, 33 days ago", at("10-20"), "", "", "11-22", 1, true},
		{"one job, 29 days ago", at("10-20"), "", "", "11-18", 1, false},
		{"nothing new in 30 days", at("09-20=10"), "10-01", "", "11-22", 0, false},
		{"one new job, the backup 30 days old", at("11-21"), "10-01", "", "11-22", 1, true},
		{"put off", at("11-20", "11-21", "11-21"), "", "11-21", "11-22", 3, false},
		{"put off, 30 days ago", at("10-20"), "", "10-21", "11-25", 1, true},
		{"put off before the backup", at("11-20", "11-20", "11-20"), "11-01", "10-21", "11-22", 3, true},
		{"put off, and three more since", at("11-01", "11-20", "11-20", "11-20"), "", "11-19", "11-22", 4, true},
		{"finished before the backup, and in none", at("11-01", "11-02"), "11-21", "", "11-22", 2, false},
		{"the same, long after", at("11-01"), "10-01", "", "11-22", 1, true},
		{"some of it is in one", at("11-20=9"), "11-21", "", "11-22", 1, false},
		{"more was in one than is here", at("11-20=11"), "11-21", "", "11-22", 0, false},
		{"saved, and open", at("=4"), "11-21", "", "11-22", 0, false},
	} {
		count, remind := due.Unsaved(c.jobs, noon(c.backup), noon(c.later), noon(c.now))
		if count != c.count || remind != c.remind {
			t.Errorf("%s: %d unsaved, reminds %v; want %d, %v", c.name, count, remind, c.count, c.remind)
		}
	}
}
