package specs_test

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tidysump/specs"
)

// aidEnds are the lines that every card of first aid has after those; then it names its sources.
var aidEnds = []string{"not", "call"}

// aidCards are the lines of each card of first aid, by its kind, in the order of doing.
func aidCards(t *testing.T) map[string][]string {
	t.Helper()
	cards := map[string][]string{}
	for _, m := range regexp.MustCompile(`(?m)^  (\w+): \[([a-z', ]+)\],$`).FindAllStringSubmatch(readText(t, "../static/app/aid/kinds.js"), -1) {
		cards[m[1]] = strings.Split(strings.ReplaceAll(m[2], "'", ""), ", ")
	}
	if len(cards) != 5 {
		t.Fatalf("there are cards for %v", slices.Sorted(maps.Keys(cards)))
	}
	return cards
}

// aidSources are where each sentence of first aid comes from: "read" in a stored public
// copy, or "from memory". Where two differ, the card asks for more.
var aidSources = map[string]string{
	"aid.burn.cool":         "read: burns association of Australia and New Zealand, by way of a burns unit: running cold tap water for 20 minutes; British Burn Association 2015, the same; from memory: European Resuscitation Council 2021, at least 20 min in cool or cold water",
	"aid.burn.strip":        "read: the same burns unit: clothing not stuck to the burn, all jewellery and watches; nidirect: don't move anything that's stuck",
	"aid.burn.cover":        "read: the same burns unit: a clean dressing or clingwrap, not wrapped round; nidirect",
	"aid.burn.warm":         "read: nidirect: make sure the person keeps warm; the burns unit: do not cause hypothermia",
	"aid.burn.not":          "read: nidirect: no ice, iced water, creams or greasy substances; a children's hospital in Glasgow: don't burst any blisters",
	"aid.burn.call":         "read: the same children's hospital: bigger than your hand; white or charred skin of any size; blisters on face, hands, arms, feet, legs or genitals; children under five",
	"aid.eye.rinse":         "read: a US clinic: cool tap water for at least 15 minutes; the US capital's poison center: 15 to 20 minutes; from memory: European Resuscitation Council 2021, 10 to 20 min. The longest is asked for",
	"aid.eye.lids":          "read: the same clinic: hold the lids open; the poison center: blink; a training text: not into the other eye",
	"aid.eye.lenses":        "read: UN GHS P305+P351+P338: remove contact lenses, if present and easy to do; continue rinsing",
	"aid.eye.not":           "read: the same clinic: don't rub, nothing but water or lens saline",
	"aid.eye.call":          "read: the same clinic: emergency care by an eye specialist afterwards, take the container; that hot oil and lost sight are a call at once is common sense, no source",
	"aid.swallowed.ask":     "read: UN GHS P301+P310: immediately call a poison center or doctor",
	"aid.swallowed.label":   "read: the US capital's poison center: what product, when, how old; New Zealand's: bring the container to the phone",
	"aid.swallowed.mouth":   "read: New Zealand's poisons centre: rinse or wipe the mouth out",
	"aid.swallowed.not":     "read: UN GHS P331: do NOT induce vomiting; a children's hospital's poison center: more of it gets into the airway; New Zealand's: no fluids unless instructed",
	"aid.swallowed.call":    "read: a US poison center: cough, vomiting or signs of breathing: to an emergency room; New Zealand's: sleepy or unconscious: an ambulance, and on the side",
	"aid.cut.press":         "read: IFRC guidelines 2020: direct manual compression; ANZCOR 9.1.1: firm pressure on or around the wound",
	"aid.cut.more":          "read: a city's emergency service: add more without removing the previous dressings",
	"aid.cut.wash":          "read: an insurer's first-aid sheet: rinse by flushing with clean running tap water, then a clean dressing",
	"aid.cut.not":           "read: a national driving manual: do not remove what is stuck in it; ANZCOR 9.1.1: pressure on or around",
	"aid.cut.call":          "read: a US clinic as quoted: blood that spurts or flows on; the same sheet: what is deep is a physician's; a newspaper's first aid: tetanus where dirty or rusty",
	"aid.injected.hospital": "read: British Fluid Power Association 2014: a medical emergency no matter how minor it appears; a nurses' course: looks like a pin-sized hole, limb-threatening",
	"aid.injected.label":    "read: an operatives' manual: tell the hospital that it is a fluid injection injury, take the data sheet",
	"aid.injected.rest":     "read: British Fluid Power Association 2014: gentle cleaning, immobilising",
	"aid.injected.not":      "read: British Fluid Power Association 2014: no food or fluid, surgery may be needed; an encyclopaedia: painless wounds make patients wait",
	"aid.injected.call":     "read: British Fluid Power Association 2014: call for an ambulance; a nurses' course: hydraulic systems, grease guns, compressors; an encyclopaedia: pressure washers",
	"aid.defer":             "the house's own",
}

// Every sentence of a card has its source here and every card names it to the reader;
// every card defers to the emergency number and to a doctor, and names no number to
// dial: those differ by country.
func TestAid_Sources(t *testing.T) {
	words := specs.Words()[0].Part("aid")
	numbers := regexp.MustCompile(`\d+`)
	seen := map[string]bool{}
	for kind, lines := range aidCards(t) {
		for _, line := range append(slices.Clone(lines), aidEnds...) {
			id := "aid." + kind + "." + line
			seen[id] = true
			if source := aidSources[id]; !strings.HasPrefix(source, "read: ") {
				t.Errorf("%s has the source %q", id, source)
			}
			for _, n := range numbers.FindAllString(words[id], -1) {
				if n != "20" || !strings.Contains(words[id], "20 minutes") || !strings.Contains(aidSources[id], "20 min") {
					t.Errorf("%s says %s: %s", id, n, words[id])
				}
			}
		}
		all := words["aid-source."+kind]
		for _, line := range append(slices.Clone(lines), aidEnds...) {
			all += " " + words["aid."+kind+"."+line]
		}
		for _, must := range []string{"your local emergency number", "doctor", "Sources: "} {
			if !strings.Contains(all, must) {
				t.Errorf("the card %s doesn't say %q: %s", kind, must, all)
			}
		}
	}
	for id := range aidSources {
		if !seen[id] && id != "aid.defer" {
			t.Errorf("%s has a source and is on no card", id)
		}
	}
}

// A card is read with one hand under water: few lines, each a short sentence that says
// what to do, and all of it fits a phone's screen (the browser's tests measure it).
func TestAid_Short(t *testing.T) {
	words := specs.Words()[0].Part("aid")
	for kind, lines := range aidCards(t) {
		letters := 0
		for _, line := range append(slices.Clone(lines), aidEnds...) {
			text := words["aid."+kind+"."+line]
			letters += len([]rune(text))
			for sentence := range strings.SplitSeq(strings.TrimSuffix(text, "."), ". ") {
				if n := len(strings.Fields(sentence)); n > 20 {
					t.Errorf("aid.%s.%s has a sentence of %d words: %s", kind, line, n, sentence)
				}
			}
		}
		if len(lines) > 4 || letters > 460 {
			t.Errorf("the card %s has %d lines and %d letters", kind, len(lines), letters)
		}
	}
}
