import { useState } from 'react';
import { unitOf } from '../../core/units/index.ts';
import { readNumber } from '../../core/words/index.ts';
import field from '../components/Field.module.css';
import { Segmented } from '../components/Segmented.tsx';
import { TextField } from '../components/TextField.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import type { StepQuestionState } from './step-question.ts';
import styles from './Tables.module.css';
import type { TableNow } from './use-table.ts';

const edges = ['0', '1', '2', '3'] as const;

type StepFieldsProps = {
  readonly of: TableNow;
  readonly question: StepQuestionState;
  readonly onLimit: (limit: number | null) => void;
};

/** Size of the step, the user's limit, the soft edge, the steepest that neighbours may stand. */
export function StepFields({ of, question, onLimit }: StepFieldsProps) {
  const { screens, show } = useWords();
  const said = screens.tables;
  const { table, limit } = of;
  const unit = unitOf(table.unit).symbol;
  const written = (value: number) => {
    const text = `${value}`;
    return show.language === 'de' ? text.replace('.', ',') : text;
  };
  const [limitText, setLimitText] = useState(limit === null ? '' : written(limit));
  const isNumber = (text: string) => text.trim() === '' || readNumber(text, show.language) !== null;
  const wrong = (text: string) => (isNumber(text) ? undefined : screens.units.notANumber);
  const putLimit = (text: string) => {
    setLimitText(text);
    if (isNumber(text)) onLimit(readNumber(text, show.language));
  };
  return (
    <div className={cx(field.rows, styles.fields)}>
      <TextField
        label={said.step(unit)}
        value={question.texts.step}
        onChange={question.setStep}
        error={wrong(question.texts.step)}
        inputMode="decimal"
      />
      <TextField
        label={said.limit(unit)}
        value={limitText}
        onChange={putLimit}
        error={wrong(limitText)}
        hint={table.limit === null && limit !== null ? said.limitOfSession : undefined}
        inputMode="decimal"
      />
      <div className={styles.wide}>
        <Segmented
          label={said.edge}
          options={edges.map((id) => ({ id, label: id }))}
          value={`${question.edge}` as (typeof edges)[number]}
          onChange={(id) => question.setEdge(Number(id))}
        />
      </div>
      <div className={styles.wide}>
        <TextField
          label={said.neighbours(unit)}
          hint={said.neighboursHint}
          value={question.texts.neighbours}
          onChange={question.setNeighbours}
          error={wrong(question.texts.neighbours)}
          inputMode="decimal"
        />
      </div>
    </div>
  );
}
