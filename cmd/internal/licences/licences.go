// Package licences has the notices of all software that the program contains.
package licences

import _ "embed"

// Notices is a list of that software with its licences, then their texts. The
// file is made from the linked modules: go run ./.ci/licences.
//
//go:embed notices.txt
var Notices string
