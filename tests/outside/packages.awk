# Turns the package lists of this machine (apt-cache dumpavail, given twice) into a
# graph: one line a package, its name, then every listed package that it depends on.
# Alternatives count one by one; names that no list has are left out.
NR == FNR { if (/^Package: /) known[$2] = 1; next }
/^Package: / { name = $2; needs[name] = ""; order[++n] = name }
/^(Pre-)?Depends: / {
	sub(/^[^:]*: /, "")
	count = split($0, part, / *[,|] */)
	for (i = 1; i <= count; i++) {
		sub(/[ (:].*/, "", part[i])
		if (part[i] in known && !((name, part[i]) in seen)) {
			seen[name, part[i]] = 1
			needs[name] = needs[name] " " part[i]
		}
	}
}
END { for (i = 1; i <= n; i++) print order[i] needs[order[i]] }
