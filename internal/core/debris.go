package core

import (
	"tidysump/internal/debris"
	"tidysump/internal/finding"
)

var debrisFields = []field{
	{name: "found", kind: aChoice, words: debris.Bits, family: "bit.", front: true},
	{name: "size", kind: aChoice, words: debris.Sizes, family: "bit-size.", front: true},
	{name: "amount", kind: aChoice, words: debris.Amounts, family: "bit-amount.", front: true},
	{name: "colour", kind: aChoice, words: debris.Colours, family: "bit-colour.", front: true},
	{name: "oil", kind: aChoice, words: debris.Oils, family: "oil-look.", front: true},
	{name: "noise", kind: aYes},
	{name: "lamp", kind: aYes},
	{name: "more", kind: aYes},
	{name: "firstService", kind: aYes},
}

// judgeDebris says whether what came out is a reason to stop.
func judgeDebris(f *form, a *answer) {
	s := debris.Sign{Bit: f.choice("found"), Size: f.choice("size"), Amount: f.choice("amount"), Colour: f.choice("colour"),
		Oil: f.choice("oil"), Noise: f.number("noise") > 0, Lamp: f.number("lamp") > 0, More: f.number("more") > 0,
		FirstService: f.number("firstService") > 0}
	verdict, reasons := debris.Judge(&s)
	a.word("verdict", "debris."+debris.Verdicts[verdict])
	for _, r := range reasons {
		grade := finding.Doubt
		if r.Verdict <= debris.Normal {
			grade = finding.Note
		}
		f.say(grade, r.Code, "")
	}
}
