package due

import "tidysump/internal/date"

// When to remind of a backup: so many finished jobs, or so many days since the last
// one. Common practice, no source.
const (
	manyJobs = 3
	longDays = 30
)

// Kept is how far a job is in a backup.
type Kept struct {
	Finished string // time; empty while the job is open
	Events   int    // that it has
	Saved    int    // of them in a file that this phone handed out; zero where it is in none
}

// unsaved reports whether a finished job has events that are in no file.
func (k *Kept) unsaved() bool { return k.Finished != "" && (k.Saved == 0 || k.Saved < k.Events) }

// Unsaved counts the finished jobs of which something is in no backup, and says
// whether to remind of it: much is in none, or for long. Put off, it comes back with
// as many jobs more, or as much later. backup is the time of the last one, which says
// how long, and nothing of what is in it. Times are those of package date; "" for a
// backup or a putting off that never was.
func Unsaved(jobs []Kept, backup, later, now string) (count int, remind bool) {
	putOff := ""
	if later > backup {
		putOff = later
	}
	fresh, oldest := 0, ""
	for i := range jobs {
		if !jobs[i].unsaved() {
			continue
		}
		at := jobs[i].Finished
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
