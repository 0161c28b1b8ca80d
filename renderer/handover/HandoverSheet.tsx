import { Download, Printer } from 'lucide-react';
import type { RequestOutput } from '../../core/contract/index.ts';
import type { Language } from '../../core/words/index.ts';
import { Button } from '../components/Button.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { TextField } from '../components/TextField.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { saveFile } from './save-file.ts';

export type HandoverSheetProps = {
  readonly made: RequestOutput<'handover.make'> | null;
  readonly language: Language;
  readonly onLanguage: (language: Language) => void;
  readonly date: string;
  readonly onDate: (date: string) => void;
  readonly onPrint: () => void;
};

export function HandoverSheet({ made, language, onLanguage, date, onDate, onPrint }: HandoverSheetProps) {
  const { screens } = useWords();
  const { say } = useToasts();
  const said = screens.handover;
  return (
    <SideSheet label={said.label} kicker={said.kicker} title={said.title} why={said.lead}>
      <Segmented
        label={said.language}
        options={(['en', 'de'] as const).map((id) => ({ id, label: screens.shell.languages[id] }))}
        value={language}
        onChange={onLanguage}
      />
      <TextField label={said.date} type="date" value={date} onChange={onDate} />
      <Button
        look="main"
        isWide
        isDisabled={!made}
        onPress={() => {
          if (!made) return;
          saveFile(made.fileName, made.html, 'text/html');
          say(said.saved(made.fileName));
        }}
      >
        <Download aria-hidden />
        {said.save}
      </Button>
      <Button isWide isDisabled={!made} onPress={onPrint}>
        <Printer aria-hidden />
        {said.print}
      </Button>
      <p>{said.privateNotes}</p>
    </SideSheet>
  );
}
