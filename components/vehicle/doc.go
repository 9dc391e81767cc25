// Package vehicle makes the tables about the vehicle itself: its size, its
// tyres, its masses and its speed, and how far it goes. What is said about the
// vehicle stands beside it, one folder a system.
package vehicle
