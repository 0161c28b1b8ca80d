import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unwrap } from '../../core/result/index.ts';
import { closeSession, openSession, saveSession, sha256 } from '../../electron/store/index.ts';
import { expect, test } from './support/workbench.ts';

const now = '2027-03-14T12:00:00.000Z';

async function saveNote(folder: string, note: string): Promise<void> {
  const open = unwrap(await openSession(folder, { now }));
  unwrap(await saveSession(open, { ...open.session, note }, now));
  unwrap(await closeSession(open));
}

/** The session as it was left on another laptop, with another note. */
async function otherCopy(folder: string, note: string): Promise<string> {
  const copy = `${folder} elsewhere`;
  cpSync(folder, copy, { recursive: true, filter: (path) => !path.endsWith('.lock') });
  await saveNote(copy, note);
  return copy;
}

const noteOf = (folder: string) => JSON.parse(readFileSync(join(folder, 'session.json'), 'utf8')).note;

// Packing, unpacking and merging each read the whole session twice, and a machine may have other work.
test.slow();

test('a copy is merged, and undo takes it back', async ({ page, sessionFolder }) => {
  const copy = await otherCopy(sessionFolder, 'gusty after noon');
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('menuitem', { name: 'Merge another copy' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Folder or zip of the other copy').fill(copy);
  await dialog.getByRole('button', { name: 'Merge', exact: true }).click();
  await expect(dialog.getByText('No log was missing here.')).toBeVisible({ timeout: 90_000 });
  await expect(dialog.getByText('gusty after noon')).toHaveCount(0);
  await dialog.getByRole('button', { name: 'Done' }).click();
  // What only the copy had changed is no conflict: it is taken.
  expect(noteOf(sessionFolder)).toBe('gusty after noon');
  await page.getByRole('button', { name: 'Undo: merged copy' }).click();
  await expect.poll(() => noteOf(sessionFolder)).not.toBe('gusty after noon');
  rmSync(copy, { recursive: true, force: true });
});

test.describe('a note that both copies changed', () => {
  test.use({ startsWith: 'nothing' });
  test('stands as it is here until the other is taken', async ({ page, sessionFolder }) => {
    const copy = await otherCopy(sessionFolder, 'gusty after noon');
    await saveNote(sessionFolder, 'calm until noon');
    await page.getByRole('button', { name: 'Open the sample' }).click();
    await page.getByRole('button', { name: 'Menu' }).click({ timeout: 90_000 });
    await page.getByRole('menuitem', { name: 'Merge another copy' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Folder or zip of the other copy').fill(copy);
    await dialog.getByRole('button', { name: 'Merge', exact: true }).click();
    const one = dialog.getByRole('heading', { name: 'One thing was changed in two ways' });
    await expect(one).toBeVisible({ timeout: 90_000 });
    expect(noteOf(sessionFolder)).toBe('calm until noon');
    await dialog.getByRole('button', { name: 'Take “gusty after noon” for Note' }).click();
    await expect.poll(() => noteOf(sessionFolder), { timeout: 60_000 }).toBe('gusty after noon');
    // The choice is not final: now the other value can be taken back.
    const back = dialog.getByRole('button', { name: 'Take “calm until noon” for Note' });
    await expect(back).toBeVisible({ timeout: 60_000 });
    rmSync(copy, { recursive: true, force: true });
  });
});

test('a session is packed with its checksum and opens from the zip', async ({ page, sessionFolder }) => {
  const zip = `${sessionFolder} on a stick.zip`;
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('menuitem', { name: 'Pack into a zip' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Zip to write, on this machine').fill(zip);
  await dialog.getByRole('button', { name: 'Pack', exact: true }).click();
  await expect(dialog.getByText(/^Packed: \d+ files\./)).toBeVisible({ timeout: 90_000 });
  expect(existsSync(zip)).toBe(true);
  const shown = (await dialog.locator('code').textContent())?.replaceAll(' ', '');
  expect(shown).toBe(sha256(readFileSync(zip)));
  await dialog.getByRole('button', { name: 'Done' }).click();

  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('menuitem', { name: 'Open a zip' }).click();
  await dialog.getByLabel('Zip on this machine').fill(zip);
  await dialog.getByRole('button', { name: 'Unpack', exact: true }).click();
  await expect(dialog.getByText(/^(\d+) of \1 files fit the checksums in the zip\./)).toBeVisible({
    timeout: 90_000,
  });
  expect((await dialog.locator('code').textContent())?.replaceAll(' ', '')).toBe(shown);
  await dialog.getByRole('button', { name: 'Open', exact: true }).click();
  await expect(dialog).toBeHidden({ timeout: 60_000 });
  rmSync(zip);
});

test.describe('a file that was set aside', () => {
  test.use({ startsWith: 'nothing' });
  test('can be looked at and taken after all', async ({ page, sessionFolder }) => {
    const path = join(sessionFolder, 'session.json');
    // A save first: only then is there a version to tell the edit from.
    await saveNote(sessionFolder, 'three');
    writeFileSync(path, readFileSync(path, 'utf8').replace('"note": "three"', '"note": "thrde"'));
    await page.getByRole('button', { name: 'Open the sample' }).click();
    await page.getByRole('button', { name: 'Look at it' }).click({ timeout: 90_000 });
    const dialog = page.getByRole('dialog');
    await expect(dialog.getByRole('listitem')).toHaveText(['note']);
    await dialog.getByRole('button', { name: 'Take it after all' }).click();
    await expect.poll(() => noteOf(sessionFolder), { timeout: 60_000 }).toBe('thrde');
  });
});
