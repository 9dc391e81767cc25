// Package toilet works out how long the tank of a toilet takes to fill and how
// much liquid it needs. What is said about toilets stands beside it, one folder
// a system.
package toilet
