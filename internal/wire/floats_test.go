package wire

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

type curve struct{ points []float64 }

func (c *curve) Members(m *Members) { m.Floats("points", c.points) }

// Another reader of JSON gets the same numbers.
func TestFloats_Written(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := curve{rapid.SliceOf(rapid.Float64()).Draw(t, "points")}
		want.points = slices.DeleteFunc(want.points, func(v float64) bool { return math.IsInf(v, 0) || math.IsNaN(v) })
		var got struct{ Points []float64 }
		if err := json.Unmarshal(Write(&want), &got); err != nil || !slices.Equal(got.Points, want.points) {
			t.Fatalf("%v comes back as %v: %v", want.points, got.Points, err)
		}
	})
}

// What JSON has no number for must not pass as an answer.
func TestFloats_NoNumber(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%v was written", v)
				}
			}()
			Write(&curve{[]float64{v}})
		}()
	}
}
