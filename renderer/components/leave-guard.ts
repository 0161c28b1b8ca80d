/** Asks about what was typed, and goes on when that may be lost. */
type Guard = (goOn: () => void) => void;

/** Of what stands over the window with something typed in it, the uppermost last. */
const guards: Guard[] = [];

/** Has `guard` asked before something else takes the place of what it stands for; the answer ends that. */
export function guardTyped(guard: Guard): () => void {
  guards.push(guard);
  return () => void guards.splice(guards.indexOf(guard), 1);
}

/** Does what came uncalled, as a dropped file: at once, or when what is being typed may be lost. */
export function afterTyped(goOn: () => void): void {
  const guard = guards.at(-1);
  if (guard) guard(goOn);
  else goOn();
}
