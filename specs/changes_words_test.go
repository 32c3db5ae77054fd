package specs_test

import (
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/changes"
)

// changeWords are those that say where two cards differ.
func changeWords(*testing.T) []family {
	return []family{
		{"differs.", texts(changes.Words), plain},
		{"differs-of.", changes.Parts, plain},
		{"differs-is.", []string{"true", "false"}, plain},
		{"differs-cooling.", texts(card.Coolings), plain},
		{"differs-clutch.", texts(card.Clutches), plain},
	}
}
