import type { RollWay } from '../../core/contract/index.ts';
import { type RunDirection, RunDirectionSchema, wayOfPull } from '../../core/session/index.ts';
import { Select } from '../components/Select.tsx';
import { useWords } from '../hooks/use-words.tsx';

const directions = RunDirectionSchema.options;
const wayIn = (direction: RunDirection, n: number): RollWay =>
  wayOfPull(direction, n) === -1 ? 'back' : 'out';

export type WaysOfAllProps = {
  readonly ways: readonly RollWay[];
  readonly onWays: (ways: readonly RollWay[]) => void;
};

/** Which way all rolls went, said at once, in the order in which they stand. */
export function WaysOfAll({ ways, onWays }: WaysOfAllProps) {
  const { screens } = useWords();
  const said = screens.coastDown;
  return (
    <Select<RunDirection>
      label={said.allWays}
      options={directions.map((id) => ({ id, label: screens.columns.ways[id] }))}
      value={directions.find((d) => ways.every((way, n) => way === wayIn(d, n))) ?? null}
      placeholder={said.eachItsOwn}
      onChange={(d) => onWays(ways.map((_, n) => wayIn(d, n)))}
    />
  );
}
