package geometry

import (
	"cmp"
	"slices"
)

// Sorted returns the numbers from 0 to n-1 sorted by a figure of each,
// ascending and stable.
func Sorted(n int, figure func(i int) float64) []int {
	order := Count(n)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(figure(a), figure(b)) })
	return order
}

// Count returns the numbers from 0 to n-1.
func Count(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}

// Picked returns the elements of a list at some indices.
func Picked[T any](list []T, of []int) []T {
	return Mapped(of, func(i int) T { return list[i] })
}

// Mapped applies f to each element of a list; nil gives nil.
func Mapped[T, U any](list []T, f func(T) U) []U {
	if list == nil {
		return nil
	}
	out := make([]U, len(list))
	for i, v := range list {
		out[i] = f(v)
	}
	return out
}
