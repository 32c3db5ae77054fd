package specs_test

import (
	"testing"

	"tidysump/internal/books"
	"tidysump/internal/oil"
)

// bookWords are those of a workshop's own books.
func bookWords(*testing.T) []family {
	return []family{
		{"waste.", texts(oil.Wastes), plain},
		{"can.", texts(books.CanStates), plain},
		{"goods.", texts(books.AllGoods), plain},
		{"shelf-line.", texts(books.LineStates), plain},
		{"shelf-fit.", []string{"suits", "unknown"}, plain},
		{"wrench.", texts(books.WrenchStates), plain},
		{"wrench-doubt.", texts(books.Doubts), plain},
	}
}
