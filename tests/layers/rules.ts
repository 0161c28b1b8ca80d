/** What the code in a folder may import. The rule of the longest matching folder decides. */
export type Rule = {
  readonly folder: string;
  /** Folders of ours; the folder itself is always allowed. */
  readonly mayImport: readonly string[];
  /** Packages; `node:*` stands for every part of Node. */
  readonly packages: readonly string[];
  readonly why: string;
};

/** Core folders from general to particular: each may import those before it, never one after it. */
export const coreOrder = [
  'core/result',
  'core/units',
  'core/fluids',
  'core/mixture',
  'core/charge',
  'core/delivery',
  'core/fit',
  'core/injection',
  'core/tables',
  'core/log',
  'core/power',
  'core/compare',
  'core/ladder',
  'core/session',
  'core/words',
  'core/handover',
  'core/contract',
] as const;

/**
 * Inside a large area its folders, from general to particular, as above. What stands beside them is either the area's
 * own words, open to all of them, or joins them together.
 */
export const insideOrders: Readonly<Record<string, readonly string[]>> = {
  'core/log': ['columns', 'table', 'rewrite', 'time', 'speeds', 'pedal', 'rises', 'pulls', 'formula'],
  'core/power': ['smoothing', 'car', 'air', 'speed', 'coast-down'],
};

const corePackages: Readonly<Record<string, readonly string[]>> = {
  'core/log': ['papaparse', 'mathjs'],
  'core/tables': ['papaparse'],
};

const coreRules: readonly Rule[] = coreOrder.map((folder, place) => ({
  folder,
  mayImport: coreOrder.slice(0, place),
  packages: ['zod', ...(corePackages[folder] ?? [])],
  why: 'core is pure and runs from general to particular: physics must not know screens, sessions or Node',
}));

/** Message carriers, and the built screens that two of them serve. */
const shellFolders = [
  'core/contract',
  'core/result',
  'core/units',
  'core/words',
  'electron/host',
  'electron/machine',
  'electron/screens',
];

const shellRules: readonly Rule[] = [
  {
    folder: 'electron/store',
    mayImport: ['core'],
    packages: ['node:*', 'zod', 'fflate'],
    why: 'the store keeps folders on disk and knows nobody who asks for them',
  },
  {
    folder: 'electron/print',
    mayImport: ['core'],
    packages: ['node:*'],
    why: 'a browser of this machine is a printer to whoever has a page; it knows neither session nor shell',
  },
  {
    folder: 'electron/host',
    mayImport: ['core', 'electron/store', 'electron/print'],
    packages: ['node:*', 'zod'],
    why: 'the host answers the contract and knows neither window nor HTTP',
  },
  {
    folder: 'electron/machine',
    mayImport: [],
    packages: ['node:*'],
    why: 'where things stand on this machine must be one answer for the launcher and every shell',
  },
  {
    folder: 'electron/screens/load-pictures.ts',
    mayImport: [],
    packages: ['node:*', '(computed)'],
    why: 'the script that draws the first screen is built with the screens, and loaded from where they stand',
  },
  {
    folder: 'electron/screens',
    mayImport: ['core/contract'],
    packages: ['node:*'],
    why: 'which built files may be served, and under which policy, must be one answer for both shells that serve them',
  },
  {
    folder: 'electron/web',
    mayImport: shellFolders,
    packages: ['node:*', 'zod'],
    why: 'a shell carries messages; what it would compute itself the other shells would lack',
  },
  {
    folder: 'electron/cli',
    mayImport: ['core', 'electron/host', 'electron/machine', 'electron/launch/pinned-node.mjs'],
    packages: ['node:*', 'zod'],
    why: 'the terminal judges loose logs with core alone, and asks the host for everything in a session',
  },
  {
    folder: 'electron/desktop',
    mayImport: shellFolders,
    packages: ['node:*', 'zod', 'electron', 'electron-store'],
    why: 'only the desktop shell sees Electron, so that everything else runs where its binary is missing',
  },
  {
    folder: 'electron/launch',
    mayImport: [
      'electron/web',
      'electron/host',
      'electron/machine',
      'electron/desktop/packaging.ts',
      'core/contract',
      'core/result',
      'core/words',
    ],
    packages: ['node:*'],
    why: 'the launcher runs before anything is installed and only starts the shells',
  },
];

const rendererRules: readonly Rule[] = [
  {
    folder: 'renderer',
    mayImport: ['core'],
    packages: [
      'react',
      'react-dom',
      'react-aria-components',
      'plotly.js-dist-min',
      'lucide-react',
      'temml',
      '@tanstack/react-virtual',
      '@fontsource-variable/atkinson-hyperlegible-next',
      '@fontsource-variable/literata',
    ],
    why: 'screens must run the same over desktop and loopback, so they reach the host through core/contract alone',
  },
];

/** Build settings belong to no layer; they name the tools, and of ours no more than the form of an icon file. */
const buildSettings: readonly Rule[] = [
  'renderer/vite.config.ts',
  'renderer/unwrap-plotly.ts',
  'electron/desktop/vite.config.ts',
  'electron/desktop/packaging.ts',
  'electron/desktop/draw-icon.ts',
].map((folder) => ({
  folder,
  mayImport: ['electron/desktop/ico-file.ts', 'renderer/unwrap-plotly.ts'],
  packages: ['vite', '@vitejs/plugin-react', 'electron-builder', 'playwright', 'node:*'],
  why: 'build settings name the build tools, which nothing that is built may',
}));

export const rules: readonly Rule[] = [...coreRules, ...shellRules, ...rendererRules, ...buildSettings];

/** A folder under one of these is private but for its index.ts. */
export const foldersWithIndex: readonly string[] = [
  ...coreOrder,
  'electron/store',
  'electron/host',
  'electron/machine',
  'electron/print',
  'electron/screens',
  'electron/web',
];
