// Package vehicle makes the tables about the vehicle itself: its size and the
// pressure of its tyres. What is said about the vehicle stands beside it, one
// folder a system.
package vehicle
