package specs_test

import (
	"testing"

	"tidysump/internal/books"
	"tidysump/internal/oil"
)

// bookWords are those of a workshop's own books.
func bookWords(*testing.T) []family {
	return []family{
		{"books.", []string{"oil", "shelf", "list", "wrenches"}, []string{"", ".how"}},
		{"books.shelf.", []string{"used", "added"}, []string{"", ".do"}},
		{"books.shelf.", []string{"item"}, plain},
		{"books.shelf.", []string{"grade", "marks", "number", "size", "for"}, []string{"", ".hint"}},
		{"books.wrenches.", []string{"high", "low", "drive", "graduation"}, []string{"", ".hint"}},
		{"ask.wrench-check.", []string{"mass", "lever", "own", "centre"}, []string{"", ".hint"}},
		{"ask.wrench-check.", []string{"massOff", "leverOff"}, plain},
		{"waste.", texts(oil.Wastes), plain},
		{"can.", texts(books.CanStates), plain},
		{"goods.", texts(books.AllGoods), plain},
		{"shelf-line.", texts(books.LineStates), plain},
		{"shelf-fit.", []string{"suits", "unknown"}, plain},
		{"wrench.", texts(books.WrenchStates), plain},
		{"wrench-doubt.", texts(books.Doubts), plain},
	}
}
