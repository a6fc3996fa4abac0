// Package timber knows the woods vehicles are built of: how they shrink, what
// they weigh, how strong they are at a moisture, how they bend, how long they
// last and dry, and how the trade measures them.
//
// Every figure is an average of clear wood, with its source and how well it
// stands; a figure that was not found is missing, and whatever needs it is
// refused by name. Nothing here is a design value: strengths are for
// comparison, and a vehicle that carries people is to be checked by a
// competent wheelwright or engineer.
//
// Moisture is in percent of the ovendry mass; lengths are quantity.Length.
// The sources are the Wood Handbook of the USDA Forest Products Laboratory
// (FPL-GTR-190, 2010, and FPL-GTR-282, 2021), Australian government species
// pages, AS 2878, and those each figure names.
//
// Vehicles, parts and cutting lists are not here.
package timber
