import type { ScreenWords } from '../../screen-words.ts';

export const channels: ScreenWords['channels'] = {
  choose: 'Kanäle',
  chooseHint: (most) => `Höchstens ${most} auf einmal.`,
  along: 'Über',
  alongSpeed: 'Motordrehzahl',
  alongTime: 'Zeit im Zug',
  time: 'Zeit ab Beginn des Zugs',
  describe: (names, pulls) => `${names}: ${pulls} ${pulls === 1 ? 'Zug' : 'Züge'} übereinander.`,
  none: 'Noch kein Zug zu zeigen.',
  busy: 'Die Kanäle werden geholt',
  at: 'Bei',
  readHint: 'Zum Ablesen in die Kurven zeigen oder dort die Pfeiltasten nehmen.',
  before: 'vorher',
  after: 'nachher',
  gap: 'kein Wert',
  derived: 'Berechnete Kanäle',
};
