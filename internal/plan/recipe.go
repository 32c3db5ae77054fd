package plan

import "tidysump/internal/card"

// recipe is what a step always brings with it: the readings it asks for, the
// figures it shows, the cautions before it, the calculations that answer what it
// raises, the timers it starts, and whether the job should not go on without it or it comes after the job. The word is its id in the catalogue ("step.<word>").
type recipe struct {
	word    string
	on      about // what it is about
	must    bool
	after   bool
	perOil  bool // said once of each oil: with one oil, its id is left out of the step's
	warns   []string
	figures []string
	asks    []string
	helps   []string
	timers  []string
	look    []string // signs asked for, where it looks at what came out
	sums    bool     // it sums up what was seen
	pours   bool     // an oil goes in for the first time
	finds   bool     // the level is read before anything is drained
	runs    bool     // the engine runs, or the bike is ridden
	opens   bool     // what it is about is opened
	closes  bool     // and closed
	tally   bool     // it counts what is touched
	interim bool     // the level is read too early to count
	at      card.NotePlace
	photo   Motif // what a photo shows most likely; "" for nothing in particular
}

// What a step that looks asks for: at the oil, at what caught the bits, and at a magnet
// that caught them.
var (
	signsOfBits   = []string{"found", "size", "amount", "colour", "magnet", "noise", "lamp", "more", "again", "firstService"}
	signsOfOil    = []string{"oil", "found", "size", "amount", "colour", "magnet", "noise", "lamp", "more", "again", "firstService"}
	signsOfMagnet = []string{"found", "depth", "size", "amount", "colour", "magnet", "noise", "lamp", "more", "again", "firstService"}
)

// recipes are the steps of the job, in the order of the trade: common
// practice, no source, except where a figure says otherwise. Which of them a
// job has, and for which circuits and fasteners, is settled in sequence.go.
var recipes = []recipe{
	// Ready: the bike known, everything laid out.
	{word: "traffic", must: true, warns: []string{"traffic", "it-rolls"}},
	{word: "identify", at: card.AtReady, photo: PhotoOdometer, asks: []string{AskOdometer, AskHours}},
	{word: "lay-out"},
	{word: "check-oil", on: aCircuit, must: true, figures: []string{"grade", "due"}, helps: []string{"oil-suits", "bottles"}},
	{word: "look-round"},
	{word: "free-filler", must: true},
	// Warm: thin oil that carries the dirt, without gassing or burning anybody.
	{word: "level-found", on: aCircuit, at: card.AtLevel, finds: true, figures: []string{"run", "wait", "band"}, asks: []string{AskLevel}, helps: []string{"level", "fuel"}, timers: []string{TimeSettle}},
	{word: "peek-off", on: aBolt, opens: true, warns: []string{"hot-oil"}, figures: []string{"size"}},
	{word: "peek-on", on: aBolt, closes: true, must: true},
	{word: "warm-up", at: card.AtWarm, runs: true, warns: []string{"carbon-monoxide", "hot-oil"}, figures: []string{"warm-target", "warm-card", "warm-card-time", "usual-warm"}, helps: []string{"cool"}},
	{word: "level-found-hot", on: aCircuit, at: card.AtLevel, finds: true, figures: []string{"run", "wait", "band"}, asks: []string{AskLevel}, helps: []string{"level", "fuel"}, timers: []string{TimeSettle}},
	{word: "key-out", must: true, warns: []string{"hot-oil"}, figures: []string{"warm-target", "warm-card"}, asks: []string{AskTemperature}, helps: []string{"cool"}},
	{word: "cool-down", at: card.AtWarm, must: true, warns: []string{"hot-oil"}, figures: []string{"warm-target", "warm-card"}, asks: []string{AskTemperature}, helps: []string{"cool"}},
	// Drain: bike, skin and tyre safe; then every opening of the circuits of the day, and
	// no other.
	{word: "stand", warns: []string{"traffic", "bike-falls"}},
	{word: "guard", tally: true, warns: []string{"oil-on-tyre", "used-oil-skin", "eyes"}},
	{word: "panel-off", on: aBolt, at: card.AtPanel, opens: true, figures: []string{"size"}},
	{word: "wash", warns: []string{"cleaner-fire", "cleaner-chlorine"}},
	{word: "name-plugs", tally: true, photo: PhotoPlug, must: true},
	{word: "tray", on: aCircuit, at: card.AtDrain, photo: PhotoPan, perOil: true},
	{word: "tray-unknown", on: aCircuit, at: card.AtDrain, photo: PhotoPan, perOil: true},
	{word: "open-drain-plug", on: aBolt, at: card.AtDrain, opens: true, photo: PhotoPlug, must: true, warns: []string{"hot-oil", "eyes", "gear-oil-on-tyre"}, figures: []string{"size"}},
	{word: "open-strainer-cap", on: aBolt, at: card.AtStrainer, opens: true, photo: PhotoFilter, must: true, warns: []string{"hot-oil", "eyes", "gear-oil-on-tyre"}, figures: []string{"size"}},
	{word: "open-strainer-cover", on: aBolt, at: card.AtStrainer, opens: true, photo: PhotoFilter, must: true, warns: []string{"hot-oil", "eyes", "gear-oil-on-tyre"}, figures: []string{"size"}},
	{word: "cover-off", on: aBolt, at: card.AtFilterOff, opens: true, photo: PhotoFilter, must: true, warns: []string{"hot-oil"}, figures: []string{"size"}},
	{word: "run-out", on: aCircuit, opens: true, perOil: true, warns: []string{"bike-falls", "it-rolls"}, figures: []string{"run-out"}, helps: []string{"run-out", "cool"}, timers: []string{TimeDrain}},
	{word: "lean", on: aCircuit, perOil: true, warns: []string{"bike-falls"}},
	{word: "strainer-out", on: aStrainer, at: card.AtStrainer, photo: PhotoFilter, must: true},
	{word: "filter-off-spin-on", on: aFilter, at: card.AtFilterOff, opens: true, photo: PhotoFilter, warns: []string{"oil-on-exhaust", "hot-oil"}},
	{word: "filter-off-cartridge", on: aFilter, at: card.AtFilterOff, opens: true, photo: PhotoFilter, warns: []string{"oil-on-exhaust", "hot-oil"}},
	{word: "filter-off-cap", on: aFilter, at: card.AtFilterOff, opens: true, photo: PhotoFilter, warns: []string{"oil-on-exhaust", "hot-oil"}},
	{word: "filter-off-unknown", on: aFilter, at: card.AtFilterOff, opens: true, photo: PhotoFilter, warns: []string{"oil-on-exhaust", "hot-oil"}},
	{word: "filter-off-centrifugal", on: aFilter, at: card.AtFilterOff, opens: true, photo: PhotoFilter, warns: []string{"hot-oil"}},
	{word: "old-ring", on: aFilter, photo: PhotoSeal, must: true, warns: []string{"ring-twice"}},
	{word: "old-gasket", on: aFilter, photo: PhotoSeal, must: true},
	// Look: what oil, plug and filter say, before anything is wiped.
	{word: "look-oil", on: aCircuit, at: card.AtLook, photo: PhotoPan, look: signsOfOil, perOil: true, helps: []string{"fuel"}},
	{word: "look-magnet", on: aBolt, at: card.AtLook, photo: PhotoPlug, look: signsOfMagnet},
	{word: "look-strainer", on: aStrainer, at: card.AtLook, photo: PhotoFilter, look: signsOfBits},
	{word: "look-filter", on: aFilter, at: card.AtLook, photo: PhotoFilter, look: signsOfBits},
	{word: "look-rotor", on: aFilter, at: card.AtLook, photo: PhotoFilter, look: signsOfBits},
	{word: "measure", on: aCircuit, figures: []string{"due"}, asks: []string{AskDrained}, helps: []string{"fuel"}},
	{word: "close-can", on: aCircuit, at: card.AtWaste, perOil: true, must: true, warns: []string{"children"}},
	{word: "leak-find", at: card.AtLook, must: true, warns: []string{"hot-engine", "hot-oil"}, helps: []string{"leak"}},
	{word: "decide", must: true, sums: true, helps: []string{"debris"}},
	// Close: everything that was opened, closed again and tightened once.
	{word: "clean-seats", photo: PhotoSeal, warns: []string{"cleaner-fire", "cleaner-chlorine"}},
	{word: "strainer-in", on: aStrainer, at: card.AtStrainer, photo: PhotoFilter, warns: []string{"solvent"}, helps: []string{"o-ring"}},
	{word: "tighten", on: aBolt, at: card.AtClose, closes: true, photo: PhotoPlug, must: true, warns: []string{"soft-thread", "wrench-unit", "torque-unknown"},
		figures: []string{"torque", "turn"}, asks: []string{AskTorque}, helps: tightening},
	{word: "tighten-several", on: aBolt, at: card.AtClose, closes: true, must: true, warns: []string{"soft-thread", "wrench-unit", "torque-unknown"},
		figures: []string{"torque", "turn"}, asks: []string{AskTorque}, helps: tightening},
	{word: "tighten-in-order", on: aBolt, at: card.AtClose, closes: true, must: true, warns: []string{"soft-thread", "wrench-unit", "torque-unknown"},
		figures: []string{"torque", "turn"}, asks: []string{AskTorque}, helps: tightening},
	{word: "prepare-spin-on", on: aFilter, at: card.AtFilterOn, photo: PhotoFilter},
	{word: "prepare-cartridge", on: aFilter, at: card.AtFilterOn, photo: PhotoFilter, warns: []string{"element-backwards"}, helps: []string{"o-ring"}},
	{word: "prepare-unknown", on: aFilter, at: card.AtFilterOn, photo: PhotoFilter, helps: []string{"o-ring"}},
	{word: "prepare-centrifugal", on: aFilter, at: card.AtFilterOn, photo: PhotoFilter, warns: []string{"solvent", "crank-hole"}},
	{word: "filter-on-torque", on: aBolt, closes: true, photo: PhotoFilter, must: true, warns: []string{"ring-twice", "wrench-unit"},
		figures: []string{"torque"}, asks: []string{AskTorque}, helps: tightening},
	{word: "filter-on-turn", on: aBolt, closes: true, photo: PhotoFilter, must: true, warns: []string{"ring-twice"}, figures: []string{"turn"}},
	{word: "filter-on-hand", on: aBolt, closes: true, photo: PhotoFilter, must: true, warns: []string{"ring-twice", "filter-box"}, figures: []string{"turn"}},
	{word: "filter-close", on: aBolt, closes: true, photo: PhotoFilter, must: true, warns: []string{"ring-twice", "wrench-unit", "filter-box"},
		figures: []string{"torque", "turn"}, asks: []string{AskTorque}, helps: tightening},
	{word: "dry-base", warns: []string{"cleaner-fire", "cleaner-chlorine"}},
	{word: "count", tally: true, must: true},
	// Fill: most of it before the first start, the rest by the level.
	{word: "pour", on: aCircuit, at: card.AtFill, must: true, pours: true, figures: []string{"first-pour", "due"}, asks: []string{AskPoured}, helps: []string{"first-fill", "bottles"}},
	{word: "pour-all", on: aCircuit, at: card.AtFill, must: true, pours: true, figures: []string{"due"}, asks: []string{AskPoured}, helps: []string{"bottles"}},
	{word: "pour-unknown", on: aCircuit, at: card.AtFill, must: true, pours: true, figures: []string{"due"}, asks: []string{AskPoured}},
	{word: "level-cover-off", on: aBolt, opens: true, must: true, warns: []string{"hot-oil"}, figures: []string{"size"}},
	{word: "level-cover-on", on: aBolt, closes: true, must: true, warns: []string{"soft-thread", "wrench-unit", "torque-unknown"},
		figures: []string{"torque", "turn"}, asks: []string{AskTorque}, helps: tightening},
	{word: "level-plug-off", on: aBolt, opens: true, must: true, warns: []string{"hot-oil"}, figures: []string{"size"}},
	{word: "level-plug-on", on: aBolt, closes: true, must: true, warns: []string{"soft-thread", "wrench-unit", "torque-unknown"},
		figures: []string{"torque", "turn"}, asks: []string{AskTorque}, helps: tightening},
	{word: "caps-on", closes: true, must: true},
	{word: "filler-on", on: aBolt, closes: true, must: true, warns: []string{"soft-thread", "wrench-unit", "torque-unknown"},
		figures: []string{"torque", "turn"}, asks: []string{AskTorque}, helps: tightening},
	{word: "covers-off", tally: true, must: true},
	{word: "first-start", at: card.AtFirstStart, must: true, runs: true, warns: []string{"carbon-monoxide", "oil-lamp"}, timers: []string{TimeIdle}},
	{word: "level-interim", on: aCircuit, at: card.AtLevel, must: true, interim: true, warns: []string{"never-above"}, figures: []string{"wait", "keep-back"}, asks: []string{AskLevel, AskPoured}, timers: []string{TimeSettle}},
	{word: "filler-off", on: aBolt, opens: true, must: true, warns: []string{"hot-oil"}, figures: []string{"size"}},
	{word: "top-up-home", on: aCircuit, at: card.AtLevel, must: true, warns: []string{"never-above"}, figures: []string{"band"}, asks: []string{AskLevel, AskPoured}},
	{word: "top-up", on: aCircuit, at: card.AtLevel, must: true, warns: []string{"never-above"}, figures: []string{"run", "wait", "band"}, asks: []string{AskLevel, AskPoured}, helps: []string{"level"}, timers: []string{TimeSettle}},
	{word: "second-start", runs: true, warns: []string{"carbon-monoxide"}, helps: []string{"oil-pressure"}},
	// Settle: dry, ridden, level right, waste away, written down.
	{word: "leak-look", at: card.AtLeak, must: true, warns: []string{"hot-engine"}, asks: []string{AskLeak}, helps: []string{"leak"}, timers: []string{TimeLeak}},
	{word: "ride", at: card.AtRide, runs: true, warns: []string{"tyre-clean", "chock-off"}},
	{word: "ride-home", at: card.AtRide, runs: true, must: true, warns: []string{"tyre-clean", "oil-lamp"}},
	{word: "panel-on", on: aBolt, at: card.AtPanel, closes: true, must: true, figures: []string{"torque"}},
	{word: "waste", at: card.AtWaste, warns: []string{"children", "never-ground"}},
	{word: "write-down", figures: []string{"interval-distance", "interval-time", "interval-hours"}},
	{word: "second-look", after: true, warns: []string{"hot-engine"}, asks: []string{AskLeak, AskLevel}, helps: []string{"leak"}},
}

// tightening are the calculations about a fastener that is closed.
var tightening = []string{"wrench", "torque-check", "torque-guess", "wrench-check", "o-ring"}

// recipeOf gives the recipe of a step that the sequence puts; there is always one.
func recipeOf(word string) *recipe {
	for i := range recipes {
		if recipes[i].word == word {
			return &recipes[i]
		}
	}
	panic("no recipe: " + word)
}

// signals gives each caution its signal word. A caution about things and not
// about people is a NOTICE.
var signals = []struct {
	signal Signal
	words  []string
}{
	{Danger, []string{"carbon-monoxide", "traffic"}},
	{Warning, []string{"bike-falls", "hot-oil", "oil-on-tyre", "gear-oil-on-tyre", "oil-on-exhaust", "ring-twice", "cleaner-fire", "cleaner-chlorine", "tyre-clean", "chock-off", "it-rolls", "children", "found-stop", "still-open"}},
	{Caution, []string{"hot-engine", "used-oil-skin", "eyes", "solvent"}},
	{Notice, []string{"soft-thread", "wrench-unit", "torque-unknown", "filter-box", "element-backwards", "crank-hole", "oil-lamp", "never-above", "never-ground"}},
}

// signalOf gives the signal word of a caution; a test holds that each has one.
func signalOf(word string) Signal {
	for _, s := range signals {
		for _, w := range s.words {
			if w == word {
				return s.signal
			}
		}
	}
	return Notice
}
