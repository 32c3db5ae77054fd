package oil

import (
	"slices"
	"strings"
)

// petrol are the API categories for petrol engines, oldest first. "The latest
// category includes the performance properties of each earlier category" (API,
// of car engines); SI, SK and SO were left out. The place of SN+ (SN PLUS) is
// from memory.
var petrol = []string{"SA", "SB", "SC", "SD", "SE", "SF", "SG", "SH", "SJ", "SL", "SM", "SN", "SN+", "SP", "SQ"}

// ReadService reads an API text as it stands on a bottle, "API SN PLUS/CF",
// "SL, CF-4", "SP-RC", "none", into its categories with a blank between them;
// conserving says that the text itself claims resource or energy conserving.
// It reports false for a word that is no category. Of the categories for
// diesel engines (C, F) and gears (GL-) only the beginning is looked at.
func ReadService(text string) (categories string, conserving, ok bool) {
	text = strings.ReplaceAll(strings.ToUpper(text), " PLUS", "+")
	for _, mark := range []string{"/", "-RC", "-EC"} {
		text = strings.ReplaceAll(text, mark, " "+mark[1:])
	}
	for _, word := range Words(text) {
		switch {
		case word == "RC" || word == "EC":
			conserving = true
		case word != None && !category(word):
			return "", conserving, false
		default:
			categories = strings.TrimSpace(categories + " " + word)
		}
	}
	return categories, conserving, true
}

func category(word string) bool {
	return word[0] == 'C' || word[0] == 'F' || strings.HasPrefix(word, "GL-") || slices.Contains(petrol, word)
}

// service judges the bottle's API categories against those asked for, of which
// any will do. Which category for diesel engines covers which is not held here.
func (j *judge) service() (Weight, string) {
	asked, has := Words(j.need.Service), Words(j.bottle.Service)
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
