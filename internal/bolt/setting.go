package bolt

import "math"

// Fit says whether a wrench can be set to a torque.
type Fit string

// The fits of a wrench.
const (
	Sets       Fit = "sets"
	BelowFifth Fit = "below-fifth"
	BelowScale Fit = "below-scale"
	AboveScale Fit = "above-scale"
	NoGrip     Fit = "grip-unknown"
	Backward   Fit = "adapter-backward" // the adapter takes the leverage away
)

// FitOf says whether the wrench can be set to a torque in N·m.
func (w Wrench) FitOf(torque float64) Fit {
	// The ends count, also when conversion between units has moved them by a hair.
	const hair = 1e-9
	switch {
	case torque > w.High*(1+hair):
		return AboveScale
	case torque < w.Low*(1-hair):
		return BelowScale
	case torque < w.Fifth()*(1-hair):
		return BelowFifth
	}
	return Sets
}

// Set gives what to set, in N·m, for a torque in N·m at the fastener, and
// whether the wrench can be set to it; it is then brought to the graduation.
// Without a setting it gives 0.
func (w Wrench) Set(a *Adapter, torque, graduation float64) (float64, Fit) {
	setting, ok := a.Setting(torque)
	if !ok && a.Grip > 0 {
		return 0, Backward
	}
	if !ok {
		return 0, NoGrip
	}
	fit := w.FitOf(setting)
	if fit == Sets {
		setting = w.Round(setting, graduation)
	}
	return setting, fit
}

// Fifth is the torque in N·m below which the wrench must not be used.
func (w Wrench) Fifth() float64 { return lowestUse * w.High }

// Adapter is a piece between wrench and fastener that moves the fastener out of
// the wrench's drive. The zero value is none.
type Adapter struct {
	Grip   float64 // mm, from the middle of the grip to the wrench's drive
	Offset float64 // mm, from the drive to the fastener
	// Angle in degrees between wrench and adapter: 0 lengthens the wrench, 90
	// changes nothing, 180 points back to the grip.
	Angle float64
}

// gain is the torque at the fastener over the torque set: (L + E·cos a)/L.
func (a *Adapter) gain() float64 {
	if a.Offset == 0 {
		return 1
	}
	if a.Grip <= 0 {
		return math.NaN()
	}
	return 1 + a.Offset*math.Cos(a.Angle*math.Pi/180)/a.Grip
}

// Setting is what to set, in N·m, so that the fastener gets a torque in N·m: T·L
// / (L + E·cos a) (US Army TM 9-254, TM 1-1500-204-23-9). It reports false where
// the grip's length isn't known, or the adapter reaches back to the hand and
// leaves less than a tenth of the leverage.
func (a *Adapter) Setting(torque float64) (float64, bool) {
	g := a.gain()
	return torque / g, g >= 0.1
}

// Applied is the torque in N·m at the fastener when the wrench answers at a
// setting in N·m.
func (a *Adapter) Applied(setting float64) float64 { return setting * a.gain() }

// Round brings a setting to the nearest of the wrench's graduations, and not
// beyond the part of its scale that may be used. A graduation below 0.001 N·m is
// none, and leaves it.
func (w Wrench) Round(setting, graduation float64) float64 {
	if graduation < 0.001 {
		return setting
	}
	setting = math.Round(setting/graduation) * graduation
	return min(max(setting, w.Low, w.Fifth()), w.High)
}

// Within gives the torques in N·m between which a wrench that is as good as its
// standard asks answers.
func (w Wrench) Within(torque float64) Range {
	off := Deviation(w.High)
	return Range{torque * (1 - off), torque * (1 + off)}
}
