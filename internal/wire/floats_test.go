package wire

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

type curve struct{ points []float64 }

func (c *curve) Members(m *Members) { Floats(m, "points", &c.points) }

func TestFloatsRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := curve{rapid.SliceOf(rapid.Float64Range(-1e12, 1e12)).Draw(t, "points")}
		var got curve
		if list := Read(Write(&want), &got); len(list) > 0 {
			t.Fatalf("%s: %v", Write(&want), list)
		}
		if !slices.Equal(got.points, want.points) {
			t.Fatalf("%v comes back as %v", want.points, got.points)
		}
	})
}

func TestFloatsFaults(t *testing.T) {
	for _, row := range [][3]string{
		{`{"points":[1,"2"]}`, "wrong-type", "/points/1"},
		{`{"points":[1e999]}`, "number-too-large", "/points/0"},
		{`{"points":3}`, "wrong-type", "/points"},
	} {
		var c curve
		list := Read([]byte(row[0]), &c)
		if len(list) != 1 || list[0].Code != row[1] || list[0].Where != row[2] {
			t.Errorf("%s: %v", row[0], list)
		}
	}
}

func FuzzFloats(f *testing.F) {
	f.Add([]byte(`{"points":[0,1.5,-2e3]}`))
	f.Add([]byte(`{"points":[null,true,{}]}`))
	f.Fuzz(func(t *testing.T, in []byte) {
		var c, again curve
		if list := Read(in, &c); len(list) > 0 {
			return
		}
		if list := Read(Write(&c), &again); len(list) > 0 || !slices.Equal(c.points, again.points) {
			t.Fatalf("%q: %v comes back as %v, %v", in, c.points, again.points, list)
		}
	})
}
