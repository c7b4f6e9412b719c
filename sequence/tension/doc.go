// Package tension has what the packages of bolt mechanics below it share: the
// comparison of words of a file. The packages build on each other in this
// order:
//
//   - strength: classes, materials, stripping of threads
//   - head: the head, its hole, its washer, the pressure under it
//   - screw: friction, torque and preload
//   - stiffness: deformation, torque and angle, settlement
//   - wrench: the wrench and its setting (independent)
package tension
