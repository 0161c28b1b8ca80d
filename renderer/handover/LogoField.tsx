import { readLogo } from '../../core/handover/index.ts';
import { Button } from '../components/Button.tsx';
import { FilePicker } from '../components/FilePicker.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useHandoverChoices } from './use-handover-choices.ts';

/** The shop's own logo: a picture that somebody chooses, or none. */
export function LogoField() {
  const { screens } = useWords();
  const { report } = useToasts();
  const { choices, choose } = useHandoverChoices();
  const said = screens.handover;
  const take = async ([file]: File[]) => {
    if (!file) return;
    const logo = readLogo(new Uint8Array(await file.arrayBuffer()), file.name);
    if (logo.ok) choose({ logo: logo.value });
    else report(logo.problems);
  };
  if (choices.logo)
    return (
      <Button isWide onPress={() => choose({ logo: null })}>
        {said.removeLogo(choices.logo.name)}
      </Button>
    );
  return (
    <FilePicker isWide onFiles={(files) => void take(files)}>
      {said.chooseLogo}
    </FilePicker>
  );
}
