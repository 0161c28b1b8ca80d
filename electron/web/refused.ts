/** A caller turned away: the HTTP status and, in a word, why. Thrown by whoever finds it, answered in one place. */
export class Refused extends Error {
  readonly status: number;

  constructor(status: number, why: string) {
    super(why);
    this.status = status;
  }
}
