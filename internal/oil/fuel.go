package oil

import "tidysump/internal/quantity"

// Petrol is the viscosity at 100 °C of what petrol leaves in oil: from that of toluene,
// 0.34 mm²/s, to that of dodecane, 0.7 (both from memory). What is lighter boils off.
var Petrol = Band{0.3, 0.7}

// MuchFuel is the share of fuel from which one acts at once. Published limits for used
// oil are 4 % (a laboratory: 5 % makes a 20 of a 30) and from 2.5 to 5 % (others); below 2
// % one laboratory calls it harmless, which is disputed.
const MuchFuel = 0.04

// RisenShare is the share of the whole that something has which came to a volume of oil.
func RisenShare(volume, came float64) float64 { return max(came, 0) / (volume + max(came, 0)) }

// FuelOf gives the least and the most share of petrol in a used oil from its viscosity
// at 100 °C and that of the new oil. Of the least, the oil has been sheared as far as JASO
// T903:2016 lets it be, so that there may be none; of the most, it has not, and both
// readings are 1 % wrong. Oil that has thickened hides fuel, which is not allowed for.
func FuelOf(fresh Band, used float64) (least, most float64) {
	if share, ok := ShareFor(Sheared(fresh.Low), Petrol.Low, used/(1-misread)); ok {
		least = share
	}
	if share, ok := ShareFor(fresh.High*(1+misread), Petrol.High, used/(1+misread)); ok {
		most = share
	}
	return least, most
}

// Sheared is the least that a new oil may have at 100 °C after the shearing test of JASO
// T903:2016: 9.0 of a 30, 12.0 of a 40, 15.0 of a 50; what has another grade stays in it.
func Sheared(at100 float64) float64 {
	for _, least := range [...][2]float64{{21.9, 21.9}, {16.3, 15}, {12.5, 12}, {9.3, 9}, {6.9, 6.9}} {
		if quantity.AtLeast(at100, least[0]) {
			return least[1]
		}
	}
	return min(at100, 4)
}
