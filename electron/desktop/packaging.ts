import type { Configuration } from 'electron-builder';

/**
 * How the desktop shell is packed for Windows, macOS and Linux. Everything is built into a few files first, so
 * no package folder goes along: what is not in these lists is not in the program.
 */
export const packaging: Configuration = {
  appId: 'example.onechange.workbench',
  productName: 'Onechange',
  copyright: 'MIT licence',
  directories: { output: 'dist/packages', buildResources: 'electron/desktop' },
  extraMetadata: { main: 'electron/desktop/dist/main.mjs' },
  files: [
    'electron/desktop/dist/**',
    'renderer/dist/**',
    'package.json',
    'LICENSE',
    '!node_modules',
    '!**/*.map',
  ],
  extraResources: [{ from: 'sample-sessions/fenmoor-hatch', to: 'sample-sessions/fenmoor-hatch' }],
  asar: true,
  npmRebuild: false,
  // Nothing is fetched or sent by the program, so nothing is published from here either.
  publish: null,
  electronFuses: {
    // Else the signed program would run any script as Node.
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    // Else a changed archive, or a folder beside it, would be run in its place.
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    // Screens come by a scheme of our own; pages from files need no privilege.
    grantFileProtocolExtraPrivileges: false,
    enableCookieEncryption: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    resetAdHocDarwinSignature: true,
  },
  icon: 'electron/desktop/icons/1024x1024.png',
  win: { target: ['nsis', 'zip'], icon: 'electron/desktop/icon.ico' },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
  mac: {
    target: ['dmg', 'zip'],
    category: 'public.app-category.utilities',
    hardenedRuntime: true,
    // So that a session's folder can be dropped on the icon.
    extendInfo: {
      CFBundleDocumentTypes: [
        {
          CFBundleTypeName: 'Folder',
          CFBundleTypeRole: 'Viewer',
          LSHandlerRank: 'None',
          LSItemContentTypes: ['public.folder'],
        },
      ],
    },
  },
  linux: {
    target: ['AppImage', 'deb', 'tar.gz'],
    icon: 'electron/desktop/icons',
    category: 'Science',
    maintainer: 'Onechange contributors',
  },
};
