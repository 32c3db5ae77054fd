package shown

import "strings"

// Choice is what may be had of one thing: the text itself, or the word that joins
// some of them, whose values it adds. Their names begin with the thing's.
func Choice(thing string, texts []string, values map[string]string) string {
	last := len(texts) - 1
	if last == 0 {
		return texts[0]
	}
	values[thing], values[thing+"last"] = texts[0], texts[last]
	if last == 1 {
		return "@" + thing + ".2"
	}
	values[thing+"between"] = strings.Join(texts[1:last], ", ")
	return "@" + thing + ".3"
}
