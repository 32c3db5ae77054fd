package core

import "slices"

// Operations lists the names of the operations and calculations.
func Operations() []string {
	var list []string
	for _, o := range operations {
		list = append(list, o.name)
	}
	for _, c := range calculations {
		list = append(list, c.op)
	}
	slices.Sort(list)
	return list
}
