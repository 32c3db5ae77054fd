package bolt_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/bolt"
)

func TestAdapter_Setting(t *testing.T) {
	for _, f := range []struct {
		torque, grip, offset, angle float64 // any one unit of torque, of length
		want, off                   float64
		source                      string
	}{
		{40, 12, 4, 0, 30, 1e-9, "TM 9-2350-277-40&P"},
		{300, 10, 4, 0, 214, 0.5, "TM 1-1500-204-23-9"},
		{135, 10, 1.5, 0, 117.39, 0.005, "manual"},
		{70, 12, 2, 0, 60, 1e-9, "US Army TM 9-254, fig. 4-5"},
		{50, 16, 2, 0, 44.44, 0.005, "manual"},
		{20, 12, 3, 0, 16, 1e-9, "manual"},
		{25, 300, 50, 0, 21.429, 0.001, "computed"},
		{25, 300, 50, 45, 22.364, 0.001, "computed"},
		// "The actual value does not change" (Navy training manual 14008). A formula
		// in circulation, T·cos a·L/(L+E), gives 0 here and isn't used.
		{25, 300, 50, 90, 25, 1e-9, "Navy 14008"},
		{25, 300, 50, 180, 30, 1e-9, "computed; pointed back: subtract (Navy 14008)"},
		{40, 400, 60, 30, 35.401, 0.001, "computed"},
	} {
		a := bolt.Adapter{Grip: f.grip, Offset: f.offset, Angle: f.angle}
		got, ok := a.Setting(f.torque)
		if !ok {
			t.Errorf("%+v: no setting", f)
		}
		near(t, fmt.Sprintf("%v with %+v, %s", f.torque, a, f.source), got, f.want, f.off)
	}
	// TM 9-254 works it forward: 60 set with 12 and 2 applies 70. Its text has
	// "L x E" where the figure has L + E; only the sum gives this.
	forward := bolt.Adapter{Grip: 12, Offset: 2}
	near(t, "60 applied", forward.Applied(60), 70, 1e-9)
}

func TestAdapter_NoSetting(t *testing.T) {
	w := bolt.Wrench{Low: 5, High: 50}
	for _, f := range []struct {
		adapter bolt.Adapter
		want    bolt.Fit
	}{
		{bolt.Adapter{Offset: 50}, bolt.NoGrip},
		{bolt.Adapter{Offset: 50, Angle: 90}, bolt.NoGrip},
		{bolt.Adapter{Offset: 300, Grip: 300, Angle: 180}, bolt.Backward},
		{bolt.Adapter{Offset: 400, Grip: 300, Angle: 180}, bolt.Backward},
		{bolt.Adapter{}, bolt.Sets},
	} {
		if _, got := w.Set(&f.adapter, 25, 0); got != f.want {
			t.Errorf("%+v: %s, want %s", f.adapter, got, f.want)
		}
	}
}

func TestWrench_FitOf(t *testing.T) {
	const lbfFt = 1.3558179483314004
	for _, f := range []struct {
		low, high, torque float64
		want              bolt.Fit
	}{
		{20, 100, 20, bolt.Sets},
		{20, 100, 100, bolt.Sets},
		{10, 100, 19.9, bolt.BelowFifth},
		{40, 200, 25, bolt.BelowScale},
		{2, 10, 25, bolt.AboveScale},
		{10 * lbfFt, 80 * lbfFt, 16 * lbfFt, bolt.Sets}, // just a fifth
	} {
		if got := (bolt.Wrench{Low: f.low, High: f.high}).FitOf(f.torque); got != f.want {
			t.Errorf("%v to %v at %v: %s, want %s", f.low, f.high, f.torque, got, f.want)
		}
	}
}

func TestWrench_Within(t *testing.T) {
	// Computed from ISO 6789:2003, 4 % and 6 %.
	for _, f := range []struct{ high, torque, low, upper float64 }{{100, 25, 24, 26}, {10, 8, 7.52, 8.48}} {
		r := bolt.Wrench{High: f.high}.Within(f.torque)
		near(t, "low", r.Low, f.low, 1e-9)
		near(t, "high", r.High, f.upper, 1e-9)
	}
}

func TestWrench_Properties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grip := rapid.Float64Range(100, 1000).Draw(t, "grip")
		a := bolt.Adapter{Grip: grip, Offset: rapid.Float64Range(0, 300).Draw(t, "offset"), Angle: rapid.Float64Range(-360, 360).Draw(t, "angle")}
		nm := rapid.Float64Range(1, 300).Draw(t, "torque")
		set, ok := a.Setting(nm)
		if !ok {
			if a.Offset*math.Cos(a.Angle*math.Pi/180) > -0.89*grip {
				t.Fatalf("%+v: no setting", a)
			}
			return
		}
		if back := a.Applied(set); math.Abs(back-nm) > 1e-9*nm {
			t.Fatalf("%v N·m came back as %v", nm, back)
		}
		forward, longer := bolt.Adapter{Grip: grip, Offset: a.Offset}, bolt.Adapter{Grip: grip, Offset: a.Offset + 10}
		s, _ := forward.Setting(nm)
		if l, _ := longer.Setting(nm); l >= s || s > nm {
			t.Fatalf("forward: %v mm sets %v, 10 mm more sets %v", a.Offset, s, l)
		}
	})
}

func TestWrench_RoundProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := bolt.Wrench{High: rapid.Float64Range(5, 300).Draw(t, "high")}
		w.Low = rapid.Float64Range(0, w.High).Draw(t, "low")
		step := rapid.Float64Range(0, w.High/10).Draw(t, "step")
		nm := rapid.Float64Range(max(w.Low, w.Fifth()), w.High).Draw(t, "torque")
		got := w.Round(nm, step)
		if w.FitOf(got) != bolt.Sets || math.Abs(got-nm) > step/2+1e-9 {
			t.Fatalf("%v rounded by %v to %v on %+v", nm, step, got, w)
		}
	})
}
