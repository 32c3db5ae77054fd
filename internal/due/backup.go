package due

import "tidysump/internal/date"

// When to remind of a backup: so many finished jobs, or so many days since the last
// one. Common practice, no source.
const (
	manyJobs = 3
	longDays = 30
)

// Unsaved counts the jobs that no backup holds, those finished after the last one,
// and says whether to remind of it: much is in none, or for long. Put off, it comes
// back with as many jobs more, or as much later. Times are those of package date;
// "" for a backup or a putting off that never was, and for a job that is open.
func Unsaved(finished []string, backup, later, now string) (count int, remind bool) {
	putOff := ""
	if later > backup {
		putOff = later
	}
	fresh, oldest := 0, ""
	for _, at := range finished {
		if at <= backup {
			continue
		}
		count++
		if at > putOff {
			fresh++
		}
		if oldest == "" || at < oldest {
			oldest = at
		}
	}
	since := oldest
	if backup != "" {
		since = backup
	}
	if putOff != "" {
		since = putOff
	}
	long := date.Valid(since) && date.Valid(now) && date.Seconds(now)-date.Seconds(since) >= longDays*86400
	return count, count > 0 && (fresh >= manyJobs || long)
}
