import { memo } from 'react';
import { BenchScreen } from '../bench/BenchScreen.tsx';
import { HandoverScreen } from '../handover/HandoverScreen.tsx';
import { Ledger } from '../ledger/Ledger.tsx';
import { NowCard } from '../now/NowCard.tsx';
import { PlanArea } from '../plan/PlanArea.tsx';
import { SetupScreen } from '../setup/SetupScreen.tsx';
import styles from './Screen.module.css';
import type { ScreenName } from './view.tsx';

/** One of the five screens over the open session; drawn again by what it reads, not by the window around it. */
export const Screen = memo(function Screen({ name }: { name: ScreenName }) {
  switch (name) {
    case 'handover':
      return (
        <div className={styles.three}>
          <Ledger />
          <HandoverScreen />
        </div>
      );
    case 'setup':
      return (
        <div className={styles.sheets}>
          <SetupScreen />
        </div>
      );
    case 'plan':
      return <PlanArea />;
    default:
      return (
        <div className={styles.three}>
          <Ledger />
          <BenchScreen />
          <NowCard />
        </div>
      );
  }
});
