import type { ScreenWords } from '../../screen-words.ts';

export const planSheets: ScreenWords['planSheets'] = {
  titles: {
    fluid: 'Einspritzung',
    ladder: 'Stufenplan',
    mixture: 'Gemisch',
    heat: 'Wärme',
    tables: 'Tabellen',
  },
  cantYetWhy: 'Dazu braucht es ein paar Zahlen aus dem Aufbau. Diese fehlen oder können nicht sein:',
};
