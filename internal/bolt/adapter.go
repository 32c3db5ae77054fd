package bolt

import "math"

// Adapter is a piece between wrench and fastener that moves the fastener out of
// the wrench's drive. The zero value is none.
type Adapter struct {
	Grip   float64 // mm, from the middle of the grip to the wrench's drive
	Offset float64 // mm, from the drive to the fastener; below 0 it points the other way
	// Angle in degrees between wrench and adapter: 0 lengthens the wrench, 90
	// changes nothing, 180 points back to the grip.
	Angle float64
}

// How far the measures of an adapter may be off (common practice, no source).
const (
	HandOff   = 20.0 // mm, the hand from the middle of the grip
	OffsetOff = 1.0  // mm, the adapter's length, measured with a rule
	AngleOff  = 5.0  // degrees, its angle, judged by eye
)

// mostLost is the share of the torque that those may take away before an adapter
// that points back is refused (common practice, no source).
const mostLost = 0.25

// gain is the torque at the fastener over the torque at the drive, (L + E·cos a)/L
// (US Army TM 9-254, TM 1-1500-204-23-9), where the hand, the adapter's length and
// its angle are off by so much.
func (a *Adapter) gain(hand, offset, angle float64) float64 {
	if a.Offset == 0 {
		return 1
	}
	length := math.Copysign(max(0, math.Abs(a.Offset)+offset), a.Offset)
	return 1 + length*math.Cos((a.Angle+angle)*math.Pi/180)/(a.Grip+hand)
}

// gains are the ends between which the gain lies.
func (a *Adapter) gains() Range {
	g := a.gain(0, 0, 0)
	r := Range{g, g}
	for _, hand := range [...]float64{-HandOff, HandOff} {
		for _, offset := range [...]float64{-OffsetOff, OffsetOff} {
			for _, angle := range [...]float64{-AngleOff, 0, AngleOff} {
				g = a.gain(hand, offset, angle)
				r = Range{min(r.Low, g), max(r.High, g)}
			}
		}
	}
	return r
}

// fit says whether anything can be set with the adapter: Sets, NoGrip or Backward.
func (a *Adapter) fit() Fit {
	g, r := a.gain(0, 0, 0), a.gains()
	switch {
	case a.Offset != 0 && a.Grip <= 0:
		return NoGrip
	case g < 1 && r.Low < (1-mostLost)*g, g <= 0:
		return Backward
	}
	return Sets
}

// Setting is what to set, in N·m, so that the fastener gets a torque in N·m: T·L
// / (L + E·cos a). It reports false where the grip's length isn't known, or the
// adapter reaches back so near to the hand that the hand's place decides.
func (a *Adapter) Setting(torque float64) (float64, bool) {
	return torque / a.gain(0, 0, 0), a.fit() == Sets
}

// Applied is the torque in N·m at the fastener when the wrench answers at a
// setting in N·m.
func (a *Adapter) Applied(setting float64) float64 { return setting * a.gain(0, 0, 0) }
