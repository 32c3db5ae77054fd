package outlook

import (
	"tidysump/internal/due"
	"tidysump/internal/job"
)

// uses lists what the engine used between each two changes of its oil, the oldest
// first. What was topped up on the way home between two of them isn't known to be all,
// so that nothing is said of these.
func (r *reckoner) uses() {
	var before *job.Trace
	rate, compared := 0.0, false
	for _, p := range r.past {
		if p.Changed[r.engine] == 0 {
			if p.Plan.GetHome() && p.Poured[r.engine] > 0 {
				before = nil
			}
			continue
		}
		if before != nil {
			u, ok := job.UseBetween(before, p, r.engine, &r.print)
			if !ok {
				before = p
				continue
			}
			used := len(u.Came) == 0
			if compared && used {
				u.Trend = "use-trend." + string(due.Compare(rate, u.PerThousand))
			}
			rate, compared = u.PerThousand, used
			r.outlook.Uses = append(r.outlook.Uses, *u)
		}
		before = p
	}
}
