// Package heating works out how long water takes to heat. What is said about
// heating stands beside it, one folder a system.
package heating
