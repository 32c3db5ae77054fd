package debris

// Spoils reports whether there is so much water, coolant or fuel in the oil that it is
// kept apart from other old oil. Foam under the cap alone is none in the oil, and a faint
// smell of fuel is in many an oil that was changed in time: common practice, no source.
func (s *Sign) Spoils() bool {
	switch s.Oil {
	case Milky, Water, FuelThin, Fuel:
		return true
	}
	return false
}
