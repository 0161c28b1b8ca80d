import styles from './SteadyText.module.css';

/** As wide as in bold: what turns bold when it is chosen moves nothing beside it, and a second click meets its mark. */
export function SteadyText({ children }: { readonly children: string }) {
  return (
    <span className={styles.steady} data-text={children}>
      {children}
    </span>
  );
}
