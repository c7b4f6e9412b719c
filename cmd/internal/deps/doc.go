// Package deps tests the dependencies of the project: which package may import
// which, and where an outside module may be used. A package or module that is
// not in its lists fails the test.
package deps
