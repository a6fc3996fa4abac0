// Package wheel is the exact geometry of a dished wheel and of the axle arm it
// runs on: what each piece measures, where it stands, how the tyre is to be
// cut, and how the arm is set so that the bottom spoke stands plumb and the
// wheels track as asked.
//
// A [Spec] says what a wheel is; [New] checks it and works the wheel out.
//
// Lengths are millimetres, angles radians. A wheel's frame is right-handed: its
// origin is on the axle arm's middle line, in the plane midway between the
// mortise circles; y runs out along the arm, away from the vehicle, z up, and x
// forward on a near wheel, backward on an off one. Angles round the wheel
// start at z and go towards x. One wheel serves either side of the vehicle.
//
// Nothing here reads surveys, meshes or prints.
package wheel

import "lostwood/internal/quantity"

// Length is a distance in millimetres.
type Length = quantity.Length

// Angle is in radians.
type Angle = quantity.Angle
