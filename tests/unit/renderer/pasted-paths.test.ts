import { describe, expect, it } from 'vitest';
import { pastedPaths } from '../../../renderer/importing/pasted-paths.ts';

describe('a pasted text', () => {
  it.each([
    ['/home/anna/logs/pull 3.csv', 'pull 3.csv', '/home/anna/logs/pull 3.csv'],
    ['C:\\logs\\pull 3.csv', 'pull 3.csv', 'C:\\logs\\pull 3.csv'],
    ['"C:\\logs\\pull 3.csv"', 'pull 3.csv', 'C:\\logs\\pull 3.csv'],
    ['\\\\shop\\logs\\a.log', 'a.log', '\\\\shop\\logs\\a.log'],
    ['file:///home/anna/pull%203.csv', 'pull 3.csv', '/home/anna/pull 3.csv'],
    ['file:///C:/logs/a.csv', 'a.csv', 'C:/logs/a.csv'],
  ])('%s is a log', (text, name, path) => {
    expect(pastedPaths(text)).toEqual({ type: 'logs', logs: [{ name, path }] });
  });

  it('of several lines is several logs', () => {
    expect(pastedPaths('/a/1.csv\r\n/a/2.csv\n')).toEqual({
      type: 'logs',
      logs: [
        { name: '1.csv', path: '/a/1.csv' },
        { name: '2.csv', path: '/a/2.csv' },
      ],
    });
  });

  it('names a folder, or a session by its session.json', () => {
    expect(pastedPaths('/home/anna/logger')).toEqual({ type: 'folder', folder: '/home/anna/logger' });
    expect(pastedPaths('/s/Fenmoor hatch/session.json')).toEqual({
      type: 'session',
      folder: '/s/Fenmoor hatch',
    });
  });

  it.each(['', 'windy today', 'see /a/1.csv', '/a/1.csv\nwindy', 'file://%zz'])('%j is none', (text) => {
    expect(pastedPaths(text)).toBeNull();
  });
});
