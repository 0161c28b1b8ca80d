import { fail, ok, type Result } from '../../core/result/index.ts';
import type { Entry, Session } from '../../core/session/index.ts';

/** The entry that stands under a number in the ledger, counted from 0. Errors: terminal/not-a-choice. */
export function entryNumbered(session: Session, number: string): Result<Entry> {
  const entry = session.ledger[Number(number)];
  const choices = `0 to ${session.ledger.length - 1}`;
  return entry
    ? ok(entry)
    : fail({ code: 'terminal/not-a-choice', facts: { option: '--entry', value: number, choices } });
}
