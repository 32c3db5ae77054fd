package job

// Photo: a picture was taken. What says what it shows; the picture itself lies in
// the phone's store under the event's id.
const Photo EventKind = "photo"

// pictured lists what a photo may show.
var pictured = []string{"plug", "pan", "filter", "seal", "odometer", "other"}

// isPictured reports whether a photo may be said to show that.
func isPictured(what string) bool {
	for _, p := range pictured {
		if p == what {
			return true
		}
	}
	return false
}
