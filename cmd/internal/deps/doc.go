// Package deps holds the project's arrows as a test: which package may import
// which, and where an outside module may be used. A package or a module that
// is not placed in its lists fails the test.
package deps
