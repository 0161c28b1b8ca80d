import { handoverForms, handoverUnits, papers } from '../../core/session/index.ts';
import { entryTitle, readNumber } from '../../core/words/index.ts';
import { Check } from '../components/Check.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { Select } from '../components/Select.tsx';
import { TextField } from '../components/TextField.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useTypedText } from '../hooks/use-typed-text.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './HandoverFields.module.css';
import { LogoField } from './LogoField.tsx';
import { useHandoverChoices } from './use-handover-choices.ts';

/** Everything that can be decided about the sheet but its date; each decision stays in the session. */
export function HandoverFields() {
  const { screens, show } = useWords();
  const { snapshot } = useSession();
  const { choices, choose } = useHandoverChoices();
  const said = screens.handover;
  const ledger = snapshot?.session.ledger ?? [];
  const hidden = choices.hiddenEntries;
  const note = choices.note ?? snapshot?.session.note ?? '';
  const keep = (part: 'customer' | 'shop' | 'note') => (text: string) =>
    choose({ [part]: text }, `handover ${part}`);
  const customer = useTypedText(choices.customer, keep('customer'));
  const shop = useTypedText(choices.shop, keep('shop'));
  const noteText = useTypedText(note, keep('note'));
  const pulls = useTypedText(
    choices.pullsPer100km === null ? '' : show.number(choices.pullsPer100km, 0),
    (text) => {
      const value = readNumber(text, show.language);
      const pullsPer100km = value !== null && value > 0 && value <= 1000 ? value : null;
      return choose({ pullsPer100km }, 'handover pulls');
    },
  );
  return (
    <>
      <Segmented
        label={said.language}
        options={(['en', 'de'] as const).map((id) => ({ id, label: screens.shell.languages[id] }))}
        value={choices.language ?? show.language}
        onChange={(language) => choose({ language })}
      />
      <Segmented
        label={said.form}
        options={handoverForms.map((id) => ({ id, label: said.forms[id] }))}
        value={choices.form}
        onChange={(form) => choose({ form })}
      />
      <Segmented
        label={said.paper}
        options={papers.map((id) => ({ id, label: id }))}
        value={choices.paper}
        onChange={(paper) => choose({ paper })}
      />
      <Select
        label={said.units}
        options={[
          { id: 'own' as const, label: said.unitsOwn },
          ...handoverUnits.map((id) => ({ id, label: said.unitChoices[id] })),
        ]}
        value={choices.units ?? 'own'}
        onChange={(units) => choose({ units: units === 'own' ? null : units })}
      />
      <TextField label={said.customer} maxLength={200} {...customer} />
      <TextField label={said.shop} maxLength={200} {...shop} />
      <LogoField />
      <TextField label={said.note} rows={4} maxLength={20_000} {...noteText} />
      <TextField label={said.pullsPer100km} hint={said.pullsPer100kmHint} inputMode="decimal" {...pulls} />
      <fieldset className={styles.entries}>
        <legend>{said.entries}</legend>
        {ledger.map((entry, number) => (
          <Check
            key={entry.id}
            label={`${number} · ${entryTitle(entry, show)}`}
            isSelected={!hidden.includes(entry.id)}
            onChange={(isShown) =>
              choose({
                hiddenEntries: isShown ? hidden.filter((id) => id !== entry.id) : [...hidden, entry.id],
              })
            }
          />
        ))}
      </fieldset>
    </>
  );
}
