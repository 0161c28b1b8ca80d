import type { ScreenWords } from '../../screen-words.ts';

export const mixture: ScreenWords['mixture'] = {
  title: 'Gemisch',
  cantYet: 'Noch kein Gemischplan.',
  over: 'Über dem Ladedruck, bei der Drehzahl der Spitzenleistung',
  boost: 'Ladedruck',
  alcohol: 'Luft für Alkohol',
  trim: 'Korrektur der\u00a0Regelung',
  table: 'Benzin im Kennfeld',
  ifLeft: 'Wenn niemand eingreift',
  now: 'Ziel jetzt',
  target: 'Ziel mit Einspritzung',
  gauge: (scale) => `Anzeige, Skala\u00a0${scale}`,
  real: 'Luft zu Brennbarem',
  best: (unit) => `Beste Leistung, ${unit}`,
  duty: (limit) => `Auslastung, Grenze\u00a0${limit}`,
  between: (low, high) => `${low} bis ${high}`,
  goals: { lean: 'Magerer kommt als letzte Stufe', hold: 'Das Ziel lassen, wo es ist' },
  goalWhy: (from, to) =>
    `An der Spitze darf das Ziel von ${from} auf ${to} gehen. Das ist eine Stufe des Plans, nach Ladedruck und Zündung, und wird gefahren wie eine.`,
  holdWhy:
    'An der Spitze ist das jetzige Ziel so mager, wie diese Mischung, die Praxis oder Ihre Grenze es zulässt.',
  atPeak: 'Luft für den Alkohol an der Spitze',
  cost: 'Preis, wenn es bleibt',
  injectors: 'Auslastung der Ventile an der Spitze',
  openLadder: 'Stufenplan öffnen',
  remarks: 'Bemerkungen',
  arrived: 'Was ankam, zurückgerechnet',
  arrivedFlow: 'Angekommenes Fluid',
  ofPlan: 'Vom Plan',
  trimSeen: 'Korrektur, mit weniger ohne Einspritzung',
  dutySeen: 'Öffnung der Ventile, mit gegen ohne Einspritzung',
  arrivedFrom: (before, after) =>
    `Aus „${before}“ und „${after}“, über den gemeinsamen Bereich; Kraftstofffluss aus dem Plan, als auf 5 % bekannt genommen (Praxis).`,
  noSpray:
    'Im Logbuch steht kein behaltener Eintrag mit Einspritzung und Zügen auf beiden Seiten: noch lässt sich nichts zurückrechnen.',
  noTrim:
    'Die Logs des Eintrags mit Einspritzung führen weder Gemischkorrektur noch Auslastung der Einspritzventile. Mit Lambda aufgezeichnet, lässt sich aus einer davon das angekommene Fluid zurückrechnen.',
  noLoop:
    'Aus der Korrektur zurückgerechnet wird nur, wo eine Regelung Lambda hält. Dieses Steuergerät hat nach dem Aufbau keine.',
};
