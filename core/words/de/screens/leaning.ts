import type { ScreenWords } from '../../screen-words.ts';

export const leaning: ScreenWords['leaning'] = {
  title: 'Auf eine frühere Sitzung stützen',
  why: 'Wie gut sich die Züge dieses Autos an einem früheren Tag wiederholt haben, stützt die Urteile von heute, vor allem die ersten. Es zählt höchstens wie acht überzählige Züge, weil Tage verschieden sind, und gar nicht, wo die Züge von heute stärker streuen.',
  earlier: 'Frühere Sitzung desselben Autos',
  choose: 'Sitzung wählen',
  noEarlier: 'Auf diesem Rechner wurde noch keine andere Sitzung geöffnet.',
  car: 'Auto',
  scatter: 'Ein Zug streut um',
  told: 'Bekannt aus',
  sparePulls: (n) => `${n} überzähligen Zügen`,
  tooFew: 'Diese Sitzung hat zu wenige Züge, um zu sagen, wie gut sie sich wiederholen.',
  otherCar: (there, here) =>
    `Das Auto heißt dort ${there} und hier ${here}. Ein anderes Auto, andere Reifen oder eine andere Straße wiederholen sich anders.`,
  looking: 'Liest ihre Aufzeichnungen',
  now: (name, share) =>
    `Stützt sich jetzt auf ${name}: ein Zug streut um ${share}. Jedes Urteil sagt, ob das zählte.`,
  lean: 'Darauf stützen',
  stop: 'Nur auf heute stützen',
};
