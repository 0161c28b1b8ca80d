/** Thrown inside a long copy that somebody called off; its caller makes contract/cancelled of it. */
export class CalledOff extends Error {}
