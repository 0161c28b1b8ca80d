import { expect, it } from 'vitest';
import { hasDisplay } from '../../../electron/launch/display.ts';

it('a window can be seen on Windows and macOS, and elsewhere where a display server runs', () => {
  expect(hasDisplay('win32', {})).toBe(true);
  expect(hasDisplay('darwin', {})).toBe(true);
  expect(hasDisplay('linux', {})).toBe(false);
  expect(hasDisplay('linux', { DISPLAY: '' })).toBe(false);
  expect(hasDisplay('linux', { DISPLAY: ':0' })).toBe(true);
  expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBe(true);
});
