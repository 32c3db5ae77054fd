package oil

// Waste is a kind of old oil that is kept apart from the others until it is handed in.
type Waste string

// The kinds. Oil that has coolant or fuel in it spoils what it is poured to: who takes
// old oil takes it by itself or not at all (common practice, no source).
const (
	EngineWaste  Waste = "engine"
	GearWaste    Waste = "gear"
	SpoiledWaste Waste = "spoiled"
)

// Wastes lists the kinds.
var Wastes = []Waste{EngineWaste, GearWaste, SpoiledWaste}
