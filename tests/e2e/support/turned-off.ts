/**
 * Pages of the browser itself that it loads ahead for every window: the suggestions under its address bar, in a
 * renderer of their own. A third of the processor that opening the workbench took went to them.
 */
const browsersOwnPages = ['WebUIOmniboxPopup', 'WebUIOmniboxAimPopup'];

/** What Playwright turns off. A browser heeds the last such list alone, so ours repeats it. */
const byPlaywright = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'LensOverlay',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'TcpPortRandomizationWin',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
  'msForceBrowserSignIn',
  'msEdgeUpdateLaunchServicesPreferredVersion',
];

/**
 * A renderer that the browser starts ahead for the next site it is sent to: with a window of its own for each test it
 * starts as many as there are tests, and each is thrown away.
 */
const startedAhead = ['SpareRendererForSitePerProcess'];

/** Features of the browser that the end-to-end tests do without. A name that a browser does not know does nothing. */
export const turnedOff: readonly string[] = [...byPlaywright, ...browsersOwnPages, ...startedAhead];
