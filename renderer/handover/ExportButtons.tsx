import { Download, Printer } from 'lucide-react';
import { useState } from 'react';
import type { HandoverFormat, RequestInput } from '../../core/contract/index.ts';
import { Button } from '../components/Button.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useHost } from '../host/HostProvider.tsx';
import { bytesOf, saveFile } from './save-file.ts';

const formats: readonly HandoverFormat[] = ['pdf', 'html', 'csv', 'json'];

export type ExportButtonsProps = {
  /** The summary in sight is the one that is saved. */
  readonly wish: RequestInput<'handover.make'>;
  readonly isReady: boolean;
  readonly onPrint: () => void;
};

/** The summary in each of its forms; a dated copy of each stays in the session's folder. */
export function ExportButtons({ wish, isReady, onPrint }: ExportButtonsProps) {
  const { screens } = useWords();
  const host = useHost();
  const { say, report } = useToasts();
  const [busy, setBusy] = useState<HandoverFormat | null>(null);
  const said = screens.handover;
  const save = async (format: HandoverFormat) => {
    setBusy(format);
    const made = await host.request('handover.export', { ...wish, format });
    setBusy(null);
    if (!made.ok) return report(made.problems);
    saveFile(made.value.fileName, bytesOf(made.value.content), made.value.type);
    say(said.saved(made.value.fileName));
  };
  return (
    <>
      {formats.map((format) => (
        <Button
          key={format}
          look={format === 'pdf' ? 'main' : 'second'}
          isWide
          isDisabled={!isReady || busy !== null}
          onPress={() => void save(format)}
        >
          <Download aria-hidden />
          {busy === format ? said.saving : said.saveAs[format]}
        </Button>
      ))}
      <Button isWide isDisabled={!isReady} onPress={onPrint}>
        <Printer aria-hidden />
        {said.print}
      </Button>
    </>
  );
}
