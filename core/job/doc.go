// Package job is the machine that leads a job from "is it safe to stay here" to "everything is refitted".
//
// The machine is pure: Step(event) returns a list of effects. Clock, sound, camera and disk are outside it, so one
// journal replays to the same bytes and an undo is a replay without the undone event.
package job
