package main

import (
	"strings"

	"dropsheet/flip"
)

// materialNames lists the materials that have a name.
func materialNames() string {
	var names []string
	for _, m := range flip.Materials() {
		names = append(names, m.Name)
	}
	return strings.Join(names, ", ")
}
