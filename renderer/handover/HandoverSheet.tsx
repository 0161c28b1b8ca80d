import type { RequestOutput } from '../../core/contract/index.ts';
import { SideSheet } from '../components/SideSheet.tsx';
import { TextField } from '../components/TextField.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { ExportButtons } from './ExportButtons.tsx';
import { HandoverFields } from './HandoverFields.tsx';

export type HandoverSheetProps = {
  readonly made: RequestOutput<'handover.make'> | null;
  /** As typed; `isDate` where it is one. */
  readonly date: string;
  readonly isDate: boolean;
  readonly onDate: (date: string) => void;
  readonly onPrint: () => void;
};

export function HandoverSheet({ made, date, isDate, onDate, onPrint }: HandoverSheetProps) {
  const { screens } = useWords();
  const said = screens.handover;
  return (
    <SideSheet label={said.label} kicker={said.kicker} title={said.title} why={said.lead}>
      <ExportButtons date={isDate ? date : null} isReady={made !== null} onPrint={onPrint} />
      <p>{said.privateNotes}</p>
      <TextField label={said.date} type="date" value={date} onChange={onDate} />
      <HandoverFields />
    </SideSheet>
  );
}
