// Package electrics works out what a pitch supply carries and what the lead to
// it loses, how long the leisure battery lasts and what the sun gives back, what
// its voltage tells, and which fuse belongs where. What is said about
// electricity stands beside it, one folder a system.
package electrics
