// Package gas works out how long the gas of a van lasts. What is said about
// gas stands beside it, one folder a system.
package gas
