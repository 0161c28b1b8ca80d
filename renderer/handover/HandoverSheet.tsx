import type { RequestInput, RequestOutput } from '../../core/contract/index.ts';
import { DateField } from '../components/DateField.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { AgainstField } from './AgainstField.tsx';
import { ExportButtons } from './ExportButtons.tsx';
import { HandoverFields } from './HandoverFields.tsx';

export type HandoverSheetProps = {
  readonly made: RequestOutput<'handover.make'> | null;
  /** What was asked of the summary in sight. */
  readonly wish: RequestInput<'handover.make'>;
  /** `2027-03-14` */
  readonly date: string;
  readonly onDate: (date: string) => void;
  readonly against: string | null;
  readonly onAgainst: (folder: string | null) => void;
  readonly onPrint: () => void;
};

export function HandoverSheet({ made, wish, onPrint, ...props }: HandoverSheetProps) {
  const { screens } = useWords();
  const said = screens.handover;
  return (
    <SideSheet label={said.label} kicker={said.kicker} title={said.title} why={said.lead}>
      <ExportButtons wish={wish} isReady={made !== null} onPrint={onPrint} />
      <p>{said.privateNotes}</p>
      <DateField label={said.date} value={props.date} onChange={props.onDate} />
      <AgainstField against={props.against} onAgainst={props.onAgainst} />
      <HandoverFields />
    </SideSheet>
  );
}
