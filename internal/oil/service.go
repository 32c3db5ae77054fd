package oil

import "slices"

// petrol are the API categories for petrol engines, oldest first. "The latest
// category includes the performance properties of each earlier category" (API,
// of car engines); SI, SK and SO were left out. The place of SN+ (SN PLUS) is
// from memory.
var petrol = []string{"SA", "SB", "SC", "SD", "SE", "SF", "SG", "SH", "SJ", "SL", "SM", "SN", "SN+", "SP", "SQ"}

// service judges the bottle's API categories against those asked for, of which
// any will do. Which category for diesel engines covers which is not held here.
func (j *judge) service() (Weight, string) {
	asked, has := j.need.Service, j.bottle.Service
	least, newest, same := -1, -1, false
	for _, c := range asked {
		same = same || slices.Contains(has, c)
		if at := slices.Index(petrol, c); least < 0 || at >= 0 && at < least {
			least = at
		}
	}
	for _, c := range has {
		newest = max(newest, slices.Index(petrol, c))
	}
	switch {
	case same:
		return Suits, "service-same"
	case newest < 0 && least >= 0 && slices.ContainsFunc(has, func(c string) bool { return slices.Contains(gears, c) }):
		return never, "gear-oil-in-engine"
	case len(asked) == 0:
		return Noted, ""
	case len(has) == 0:
		return Open, "service-unknown"
	case has[0] == None:
		return Unfit, "service-none"
	case least < 0:
		return Open, "service-order-unknown"
	case newest < 0:
		return Unfit, "service-other-engine"
	case newest < least:
		return Unfit, "service-older"
	case j.need.WetClutch:
		return Suits, "service-newer-wet"
	}
	return Suits, "service-newer"
}
