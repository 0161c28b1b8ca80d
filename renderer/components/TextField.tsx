import {
  TextField as AriaTextField,
  type TextFieldProps as AriaTextFieldProps,
  FieldError,
  Input,
  Label,
  Text,
  TextArea,
} from 'react-aria-components';
import { cx } from '../design/cx.ts';
import styles from './Field.module.css';

export type TextFieldProps = Omit<AriaTextFieldProps, 'className' | 'style' | 'children'> & {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly placeholder?: string | undefined;
  /** More than one line of text. */
  readonly rows?: number;
};

export function TextField({ label, hint, error, placeholder, rows, onKeyDown, ...props }: TextFieldProps) {
  return (
    <AriaTextField
      {...props}
      {...(onKeyDown && {
        onKeyDown: (event) => {
          onKeyDown(event);
          // A field that listens for keys keeps them all to itself: Escape still has to close its dialog.
          if (event.key === 'Escape') event.continuePropagation();
        },
      })}
      isInvalid={error !== undefined}
      className={cx(styles.field)}
    >
      <Label className={cx(styles.label)}>{label}</Label>
      {rows ? (
        <TextArea rows={rows} placeholder={placeholder ?? ''} className={cx(styles.input, styles.area)} />
      ) : (
        <Input placeholder={placeholder ?? ''} className={cx(styles.input)} />
      )}
      {hint && !error && (
        <Text slot="description" className={cx(styles.hint)}>
          {hint}
        </Text>
      )}
      <FieldError className={cx(styles.error)}>{error}</FieldError>
    </AriaTextField>
  );
}
