import type { ScreenWords } from '../../screen-words.ts';

export const entry: ScreenWords['entry'] = {
  addTitle: 'Was wurde geändert?',
  editTitle: 'Eintrag bearbeiten',
  oneThing: 'Eines. Zwei Änderungen auf einmal lassen sich nachher nicht trennen.',
  kind: 'Art der Änderung',
  from: 'Von',
  to: 'Auf',
  sparkFromHint: 'Leer gelassen, ist „Auf“ die Stufe.',
  step: 'Schritt',
  start: 'Beginn',
  where: 'Wo',
  whereHint: 'etwa: über 4.400 1/min',
  title: 'Name im Logbuch',
  titleHint: 'Leer gelassen, ergibt er sich aus der Änderung.',
  against: 'Beurteilt gegen',
  drivenAgain: 'Eintrag, der noch einmal gefahren wird',
  againstLast: 'den letzten behaltenen Eintrag',
  willBeCalled: 'Im Logbuch',
  add: 'Ins Logbuch',
  note: 'Notiz',
};
