// Package water works out how fast hot water burns, how long the water on board
// lasts and what it weighs. What is said about water stands beside it, one
// folder a system.
package water
