package fill

import "math"

// Where the oil should stand, as shares of the band between the marks: the
// middle to three quarters, common practice, no source.
const (
	AimLow  = 0.5
	AimHigh = 0.75
)

// Reliable is the most that two readings may differ, as a share of the band,
// to count as one: common practice, no source.
const Reliable = 1.0 / 8

// Advice is what to do about a level.
type Advice string

// The advices.
const (
	AddOil  Advice = "pour"
	Leave   Advice = "right"
	Full    Advice = "full"     // between the aim and the upper mark: nothing to do
	TakeOut Advice = "take-out" // above the upper mark
	Unsure  Advice = "unsure"   // the reading may be wrong by too much
)

// Amend says what to do about a level, given as a share of the band (0 the
// lower mark, 1 the upper), and how many millilitres that is; band is the
// volume between the marks in mL, off how wrong the reading may be as a share.
//
// Oil is added in steps: what is missing to the middle less 50 mL, or 50 mL
// when that is less (common practice, no source); never past the upper mark even
// if the reading is wrong by off. Below the lower mark the step ends there, for
// the engine has another shape below. What is too much is taken out down to
// three quarters.
func Amend(share, band, off float64) (Advice, float64) {
	switch {
	case off > Reliable:
		return Unsure, 0
	case share > 1:
		return TakeOut, math.Round((share-AimHigh)*band/10) * 10
	case share > AimHigh:
		return Full, 0
	case share >= AimLow:
		return Leave, 0
	}
	step := tens(step(Missing(share, band)))
	if share < 0 {
		step = min(step, max(tens(-share*band), 50))
	}
	step = min(step, tens((1-off-share)*band))
	if step <= 0 {
		return Leave, 0
	}
	return AddOil, step
}

// Missing gives the millilitres that are missing to the middle of a band that holds
// so many.
func Missing(share, band float64) float64 { return max(AimLow-share, 0) * band }

func step(missing float64) float64 { return max(missing-50, min(missing, 50)) }

// tens rounds down to the 10 mL that a jug can show, and what is less to 1 mL;
// the addend keeps a figure that is whole but for the last bit.
func tens(ml float64) float64 {
	if ml < 10 {
		return math.Floor(ml + 1e-9)
	}
	return math.Floor(ml/10+1e-9) * 10
}
