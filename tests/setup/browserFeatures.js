/**
 * The pages that hang under the address bar. A whole Chromium loads two of them, unseen, for every window, which takes a
 * fifth of the time of the page that is tested; that page does not know of them.
 */
const UNDER_THE_ADDRESS_BAR = ['WebUIOmniboxPopup', 'WebUIOmniboxAimPopup', 'WebUIOmniboxFullPopup'];

/** What Playwright switches off, each with its reason there: Chromium heeds only the last of several such lists. */
export const OFF_BY_PLAYWRIGHT = [
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

/** The argument that switches off what is of Chromium's own window and not of the page. */
export const withoutFeatures = `--disable-features=${[...OFF_BY_PLAYWRIGHT, ...UNDER_THE_ADDRESS_BAR].join(',')}`;
