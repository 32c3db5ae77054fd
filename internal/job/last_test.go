package job_test

import (
	"testing"

	"tidysump/internal/job"
)

// A job is compared with the one that was finished last before it began: not with one
// that was begun later, nor with one that is open.
func TestLastBefore(t *testing.T) {
	at := func(day string) string { return "2026-11-" + day + "T10:00:00.000Z" }
	finished := []job.Finished{{ID: "b", Time: at("12")}, {ID: "open"}, {ID: "c", Time: at("20")}, {ID: "a", Time: at("03")}}
	for started, want := range map[string]string{at("01"): "", at("03"): "", at("10"): "a", at("13"): "b", at("20"): "b", at("21"): "c"} {
		if got := job.LastBefore(started, finished); got != want {
			t.Errorf("started %s: %q, want %q", started, got, want)
		}
	}
	if got := job.LastBefore(at("13"), nil); got != "" {
		t.Errorf("no job: %q", got)
	}
}
