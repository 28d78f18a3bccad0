# A random graph: -v seed= nodes= edges=. One line a name, then the names it needs.
# The generator is awk-independent: products stay below 2^53.
function below(n) {
	state = (state * 1103515 + 12345) % 2147483648
	return int(state / 64) % n
}
BEGIN {
	state = seed * 7919 + 1
	for (i = 0; i < nodes; i++) line[i] = "n" i
	for (i = 0; i < edges; i++) {
		from = below(nodes); to = below(nodes)
		if (from != to) line[from] = line[from] " n" to
	}
	for (i = 0; i < nodes; i++) print line[i]
}
