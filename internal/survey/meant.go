package survey

// Meant says which of the known words would do instead of one that is none of
// them: "did you mean reach?", or all of them after the verb where none is near
// and they are few; else nothing.
func Meant(word string, known []string, verb string) string { return meant(word, known, verb) }
