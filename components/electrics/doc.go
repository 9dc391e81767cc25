// Package electrics works out what a pitch supply carries. What is said about
// electricity stands beside it, one folder a system.
package electrics
