import { randomUUID } from 'node:crypto';
import type { CarFile } from '../../core/power/index.ts';
import type { Result } from '../../core/result/index.ts';
import { createSession, SessionSchema } from '../../core/session/index.ts';
import { createSessionAt } from '../store/index.ts';

/** A session folder at exactly this path, with the car and the air of a CAR.json. */
export function newSession(folder: string, name: string, carFile: CarFile): Promise<Result<string>> {
  const now = new Date().toISOString();
  const { conditions, ...car } = carFile;
  const session = createSession({ id: randomUUID(), baselineId: randomUUID(), name, now, car });
  return createSessionAt(folder, conditions ? SessionSchema.parse({ ...session, conditions }) : session, now);
}
