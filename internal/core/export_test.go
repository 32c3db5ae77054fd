package core

import (
	"maps"
	"slices"
)

// Operations lists the names of the operations.
func Operations() []string { return slices.Sorted(maps.Keys(operations)) }
