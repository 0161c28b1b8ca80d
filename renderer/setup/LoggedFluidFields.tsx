import field from '../components/Field.module.css';
import { useLoggedFluid } from '../hooks/use-logged-fluid.ts';
import { useWords } from '../hooks/use-words.tsx';
import { SheetPoints } from '../points/SheetPoints.tsx';
import { optionalParts } from '../sheets/field-specs.ts';
import { OptionalFields } from '../sheets/OptionalFields.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import section from './SetupSection.module.css';

/** What went through the nozzle: as refilled, and as logged. */
export function LoggedFluidFields({ sheet }: { sheet: Sheet }) {
  const { screens, show } = useWords();
  const said = screens.setup;
  const logged = useLoggedFluid();
  return (
    <>
      <SheetPoints list="refills" sheet={sheet} />
      <div className={section.fields}>
        <OptionalFields part={optionalParts.logged} sheet={sheet} />
      </div>
      <p className={field.hint}>
        {logged
          ? said.loggedFrom(
              screens.ledger.pulls(logged.pulls),
              show.quantity(logged.fluid / logged.pulls, 'smallVolume'),
            )
          : said.loggedNone}
      </p>
    </>
  );
}
