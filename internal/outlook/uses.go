package outlook

import (
	"tidysump/internal/due"
	"tidysump/internal/job"
)

// uses lists what the engine used between each two changes of its oil, the oldest
// first.
func (r *reckoner) uses() {
	var before *job.Trace
	rate, compared := 0.0, false
	for _, p := range r.past {
		if p.Changed[r.engine] == 0 {
			continue
		}
		if before != nil {
			u, ok := job.UseBetween(before, p, r.engine, &r.print)
			if !ok {
				before = p
				continue
			}
			if compared {
				u.Trend = "use-trend." + string(due.Compare(rate, u.PerThousand))
			}
			rate, compared = u.PerThousand, true
			r.outlook.Uses = append(r.outlook.Uses, *u)
		}
		before = p
	}
}
