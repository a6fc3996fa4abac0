package bolt

// A ThreadSystem is a count of threads for each diameter.
type ThreadSystem int

// The systems. In count they differ at 1/2 in alone; the angle of the thread, 55
// or 60 degrees (from memory), tells them apart elsewhere.
const (
	American  ThreadSystem = iota // Sellers, United States standard, unified coarse
	Whitworth                     // British standard Whitworth
)

// threads are the threads to the inch of a diameter in inches, American then
// Whitworth.
//
// American: TR Fastenings, unified coarse. Whitworth: J. Whitworth, Miscellaneous
// Papers on Mechanical Subjects, p. 39, to 1 in; over it, and 9/16, Machinery's
// Handbook, 31st edition, Part B, BS 1083.
var threads = [...]struct {
	bolt  Length
	count [2]int
}{
	{1. / 4, [2]int{20, 20}},
	{5. / 16, [2]int{18, 18}},
	{3. / 8, [2]int{16, 16}},
	{7. / 16, [2]int{14, 14}},
	{1. / 2, [2]int{13, 12}},
	{9. / 16, [2]int{12, 12}},
	{5. / 8, [2]int{11, 11}},
	{3. / 4, [2]int{10, 10}},
	{7. / 8, [2]int{9, 9}},
	{1, [2]int{8, 8}},
	{1 + 1./8, [2]int{7, 7}},
	{1 + 1./4, [2]int{7, 7}},
	{1 + 1./2, [2]int{6, 6}},
}

// ThreadsPerInch returns the threads to the inch of a bolt of diameter d. A
// count that is in neither system points to a country smith's die: count it.
func ThreadsPerInch(d Length, system ThreadSystem) (int, Source) {
	if system != American && system != Whitworth {
		return 0, Unlisted
	}
	i, s := find(d, len(threads), func(i int) Length { return threads[i].bolt * inch })
	if s == Unlisted {
		return 0, s
	}
	return threads[i].count[system], s
}

// OneThread returns the length of bolt that one thread takes.
func OneThread(d Length, system ThreadSystem) (Length, Source) {
	count, s := ThreadsPerInch(d, system)
	if s == Unlisted {
		return 0, s
	}
	return inch / Length(count), s
}

// sized returns the size of the tables that d is, or was made as.
func sized(d Length) (Length, Source) {
	i, s := find(d, len(threads), func(i int) Length { return threads[i].bolt * inch })
	if s == Unlisted {
		return 0, s
	}
	return threads[i].bolt * inch, s
}

// runOut returns the length past its full threads to which a bolt of diameter
// d may still take a nut: two and a half threads, of the coarser system. For a
// diameter in no table it is that of the next size up, and over all of them
// half the diameter, which no row exceeds.
func runOut(d Length) Length {
	const turns = 2.5
	size, s := sized(d)
	if s == Unlisted {
		size = d
	}
	for _, row := range threads {
		if row.bolt*inch >= size {
			return turns * inch / Length(min(row.count[American], row.count[Whitworth]))
		}
	}
	return d / 2
}

// ThreadLength returns the thread of a new bolt of diameter d and that length
// under the head: 2D + 1/4 in, and 1/4 more over 6 in, or the whole of a bolt
// that is shorter than that (ASME B18.5 and B18.2.1, in the answers of Portland
// Bolt, whose imported stock has more). It proves nothing of an old bolt: shops
// threaded to need.
func ThreadLength(d, length Length) (Length, Source) {
	size, s := sized(d)
	switch {
	case !(length > 0 && length <= longest):
		return 0, Unlisted
	case s != Unlisted:
		d = size
	case usual(d):
		s = Pattern
	default:
		return 0, Unlisted
	}
	thread := 2*d + inch/4
	if length > 6*inch+same {
		thread += inch / 4
	}
	return min(thread, length), s
}
