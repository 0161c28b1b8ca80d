import screen from '../app/Screen.module.css';
import { useView } from '../app/view.tsx';
import { HeatScreen } from '../heat/HeatScreen.tsx';
import { LadderScreen } from '../ladder/LadderScreen.tsx';
import { MixtureScreen } from '../mixture/MixtureScreen.tsx';
import { TablesScreen } from '../tables/TablesScreen.tsx';
import { PlanNav } from './PlanNav.tsx';
import { PlanScreen } from './PlanScreen.tsx';

/** The sheets of the plan; the list of them always stands at the top left. */
export function PlanArea() {
  const view = useView();
  if (view.planSheet === 'fluid')
    return (
      <div className={screen.three}>
        <PlanScreen nav={<PlanNav />} />
      </div>
    );
  return (
    <div className={screen.sheets}>
      <PlanNav isAlone />
      {view.planSheet === 'ladder' && <LadderScreen />}
      {view.planSheet === 'mixture' && <MixtureScreen />}
      {view.planSheet === 'heat' && <HeatScreen />}
      {view.planSheet === 'tables' && <TablesScreen />}
    </div>
  );
}
