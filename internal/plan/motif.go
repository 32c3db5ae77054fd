package plan

// Motif is what a photo shows.
type Motif string

// The motifs.
const (
	PhotoPlug     Motif = "plug"   // a drain plug or its magnet
	PhotoPan      Motif = "pan"    // the oil in the tray
	PhotoFilter   Motif = "filter" // a filter or strainer
	PhotoSeal     Motif = "seal"   // a seal or its seat
	PhotoOdometer Motif = "odometer"
	PhotoOther    Motif = "other" // something else
)

// Motifs lists the motifs, in the order in which they are offered.
var Motifs = []Motif{PhotoPlug, PhotoPan, PhotoFilter, PhotoSeal, PhotoOdometer, PhotoOther}

// motif is what a photo at a step shows most likely: chosen beforehand, since
// gloves don't like to choose (common practice, no source). A fastener that is
// closed is worth a photo of the plug only where oil runs out.
func (r *recipe) motif(on subject) Motif {
	if r.photo == "" || r.photo == PhotoPlug && on.bolt != nil && !on.bolt.Drains {
		return PhotoOther
	}
	return r.photo
}
