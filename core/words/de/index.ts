import type { Dictionary } from '../dictionary.ts';
import { chargeNotes, chargeProblems } from './charge.ts';
import { compareNotes, compareProblems } from './compare.ts';
import { contractNotes, contractProblems } from './contract.ts';
import { deliveryNotes, deliveryProblems } from './delivery.ts';
import { fitNotes, fitProblems } from './fit.ts';
import { fitRuleWords } from './fit-rules.ts';
import { fluidsNotes, fluidsProblems } from './fluids.ts';
import { handoverNotes, handoverProblems } from './handover.ts';
import { injectionNotes, injectionProblems } from './injection.ts';
import { ladderNotes, ladderProblems } from './ladder.ts';
import { logNotes, logProblems } from './log.ts';
import { mixtureNotes, mixtureProblems } from './mixture.ts';
import { powerNotes, powerProblems } from './power.ts';
import { quantityNames } from './quantities.ts';
import { sessionNotes, sessionProblems } from './session.ts';
import { storeNotes, storeProblems } from './store.ts';
import { tablesNotes, tablesProblems } from './tables.ts';
import { terminalNotes, terminalProblems } from './terminal.ts';

export const dictionary: Dictionary = {
  problems: {
    ...logProblems,
    ...powerProblems,
    ...compareProblems,
    ...fluidsProblems,
    ...deliveryProblems,
    ...injectionProblems,
    ...fitProblems,
    ...chargeProblems,
    ...mixtureProblems,
    ...ladderProblems,
    ...tablesProblems,
    ...sessionProblems,
    ...storeProblems,
    ...contractProblems,
    ...handoverProblems,
    ...terminalProblems,
  },
  notes: {
    ...logNotes,
    ...powerNotes,
    ...compareNotes,
    ...fluidsNotes,
    ...deliveryNotes,
    ...injectionNotes,
    ...fitNotes,
    ...chargeNotes,
    ...mixtureNotes,
    ...ladderNotes,
    ...tablesNotes,
    ...sessionNotes,
    ...storeNotes,
    ...contractNotes,
    ...handoverNotes,
    ...terminalNotes,
  },
  quantities: quantityNames,
  fitRules: fitRuleWords,
};
