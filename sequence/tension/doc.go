// Package tension is what the rooms of bolt mechanics below it share: how an
// assumption is told, and how the words of a file are compared. It imports
// units alone. The rooms build on one another in this order:
//
//   - strength: classes, materials, stripping of threads
//   - head: the head, its hole, its washer, the pressure under it
//   - screw: friction, torque and preload
//   - stiffness: what gives way, torque and angle, settlement
//   - wrench: what to set (by itself)
package tension
