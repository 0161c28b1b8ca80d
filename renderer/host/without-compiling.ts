import { checkWithoutCompiling } from '../../core/result/index.ts';

// Imported before everything else: a schema probes for compiling when it is made.
checkWithoutCompiling();
