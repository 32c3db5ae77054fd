package line_test

import (
	"testing"

	"tidysump/internal/line"
)

// What is said twice of bottles is of two of them.
func TestRead_SaidTwice(t *testing.T) {
	rows := map[int]int{}
	for _, p := range line.Read(&line.Ask{Text: "25 offen 25 offen", System: "metric", Language: "de"}).Pieces {
		if p.Field == "opened" {
			rows[p.Row]++
		}
	}
	if len(rows) != 2 || rows[0] != 1 || rows[1] != 1 {
		t.Errorf("rows %v", rows)
	}
}
