import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { HostPort } from '../../../core/contract/index.ts';
import { firstPage } from '../../../electron/screens/index.ts';

const built =
  '<!doctype html>\n<html lang="en">\n<head><title>x</title></head><body><div id="root"></div></body>';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'onechange-page-'));
  mkdirSync(join(folder, 'dist'));
  mkdirSync(join(folder, 'picture', 'dist'), { recursive: true });
  writeFileSync(join(folder, 'dist', 'index.html'), built);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const host = {
  handle: async (name: string) => ({ ok: true, value: `answer to ${name}` }),
} as unknown as HostPort;

/** The page with a script that draws as `body` says. */
function pageOf(body: string): Promise<string> {
  writeFileSync(
    join(folder, 'picture', 'dist', 'draw.mjs'),
    `export async function drawPicture(ask) { ${body} }\n`,
  );
  return firstPage(host, join(folder, 'dist'))();
}

describe('the page that the screens start from', () => {
  it('holds what the host has drawn, beside the place where the program draws', async () => {
    const page = await pageOf(
      `const { value } = await ask('session.get', {}); return { html: '<h1>' + value + '</h1>', language: 'de', theme: 'night' };`,
    );
    expect(page).toContain('<html lang="de" data-theme="night">');
    expect(page).toContain(
      '<div id="root"></div><div id="picture" aria-hidden="true" inert><h1>answer to session.get</h1></div>',
    );
    expect(page).toContain('<script src="./first-look.js"></script>');
  });

  it('takes what was drawn as it is, also where it looks like a pattern', async () => {
    const page = await pageOf(`return { html: "<h1>$& $1 $' </h1>", language: 'en', theme: 'day' };`);
    expect(page).toContain("<h1>$& $1 $' </h1>");
  });

  it.each([
    ['has no picture', 'return null;'],
    ['fails', 'throw new Error("drawn wrong");'],
    ['takes longer than anybody should wait', 'return new Promise(() => {});'],
  ])('is the built one where the script %s', async (_, body) => {
    expect(await pageOf(body)).toBe(built);
  });

  it('is the built one where no script stands beside the screens', async () => {
    expect(await firstPage(host, join(folder, 'dist'))()).toBe(built);
  });
});
