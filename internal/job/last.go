package job

import "tidysump/internal/wire"

// Finished is a job of a bike by its id, with the time of its finish; empty while
// it is open.
type Finished struct{ ID, Time string }

// Members names the members of a job that may be finished.
func (f *Finished) Members(m *wire.Members) {
	m.String("id", &f.ID)
	m.String("finished", &f.Time)
}

// LastBefore gives the id of the job that was finished last before another one was
// started; empty when there is none. What is seen in the other is compared with it.
func LastBefore(started string, jobs []Finished) string {
	var last Finished
	for _, f := range jobs {
		if f.Time != "" && f.Time < started && f.Time > last.Time {
			last = f
		}
	}
	return last.ID
}
