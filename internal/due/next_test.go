package due_test

import (
	"testing"

	"tidysump/internal/due"
)

// Changed at 12 400 km with an interval of 6 000 km: due at 18 400 km.
func TestNext(t *testing.T) {
	if got := due.Next(12400, 6000); got != 18400 {
		t.Errorf("Next(12400, 6000) = %g, want 18400", got)
	}
}
