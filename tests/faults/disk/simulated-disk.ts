import { diskError, type FileSystem } from '../../../electron/store/index.ts';
import type { Chance } from '../../support/chance.ts';

type FileNode = {
  readonly kind: 'file';
  /** As programs see it. */
  content: Uint8Array;
  /** As the platter holds it: the content of the last flush. */
  flushed: Uint8Array;
  modified_ms: number;
};
type FolderNode = {
  readonly kind: 'folder';
  readonly entries: Map<string, DiskNode>;
  /** Names that survive a power cut. */
  flushed: Map<string, DiskNode>;
};
type DiskNode = FileNode | FolderNode;

/** A change of names that no folder flush has made durable yet. */
type NameChange = {
  readonly remove: { readonly folder: FolderNode; readonly name: string } | null;
  readonly add: { readonly folder: FolderNode; readonly name: string; readonly node: DiskNode } | null;
};

/** Thrown at the fault and at every operation after it, as nothing answers any more. */
export class PowerCut extends Error {}

/** What happens at one disk operation. */
export type Fault = {
  /** Counted from 1 since the fault was set. */
  readonly operation: number;
  /** `cut`: power or program gone. A code: that operation fails, and the `lasting` ones after it. */
  readonly what: 'cut' | (string & {});
  /** Whether the operation takes effect before the fault shows. */
  readonly after: boolean;
  /** How many further operations fail too. */
  readonly lasting: number;
};

export type DiskOptions = {
  /** A disk that says it has flushed and has not: nothing can be durable on it, and a test must notice. */
  readonly ignoresFlush?: boolean;
};

const zeros = new Uint8Array(0);
const blockLength = 64;

/**
 * A disk in memory that is as nasty as a real one may be: content that was not flushed is lost, torn or zeroed
 * by a power cut; names that were not flushed appear or vanish in any order; a failed flush drops what it should
 * have kept.
 */
export class SimulatedDisk {
  readonly #root: FolderNode = folderNode();
  #pending: NameChange[] = [];
  #fault: Fault | null = null;
  #count = 0;
  #isDead = false;
  /** The disk's own clock. */
  now_ms = 1_000_000;
  readonly #chance: Chance;

  readonly #ignoresFlush: boolean;

  constructor(chance: Chance, options: DiskOptions = {}) {
    this.#chance = chance;
    this.#ignoresFlush = options.ignoresFlush ?? false;
  }

  /** Operations since the last fault was set. */
  get operations(): number {
    return this.#count;
  }

  /** True once the fault has come. */
  get hasStruck(): boolean {
    return this.#fault !== null && this.#count >= this.#fault.operation;
  }

  set fault(fault: Fault | null) {
    this.#fault = fault;
    this.#count = 0;
    this.#isDead = false;
  }

  /** Power comes back: only what was durable is there, and of the rest whatever chance left. */
  loseUnflushed(): void {
    // Some disks write all in order, some nothing, most something of both.
    const keep = this.#chance.pick([0, 1, 0.2, 0.5, 0.8]);
    for (const change of this.#pending) if (this.#chance.share() < keep) apply(change, 'flushed');
    this.#pending = [];
    const visit = (node: DiskNode) => {
      if (node.kind === 'file') {
        node.content = node.content === node.flushed ? node.flushed : this.#torn(node, keep);
        node.flushed = node.content;
        return;
      }
      node.entries.clear();
      for (const [name, child] of node.flushed) {
        node.entries.set(name, child);
        visit(child);
      }
    };
    visit(this.#root);
  }

  #torn({ content, flushed }: FileNode, keep: number): Uint8Array {
    const way = this.#chance.pick(['old', 'cut off', 'zeros', 'blocks', 'new']);
    if (way === 'old' || keep === 0) return flushed;
    if (way === 'new') return content;
    if (way === 'cut off') return content.slice(0, this.#chance.int(0, content.length));
    const torn = new Uint8Array(content.length);
    if (way === 'zeros') return torn;
    for (let at = 0; at < torn.length; at += blockLength) {
      if (this.#chance.share() < keep) torn.set(content.subarray(at, at + blockLength), at);
    }
    return torn;
  }

  /** Everything becomes durable, as it does some time after a program was killed. */
  flushAll(): void {
    for (const change of this.#pending) apply(change, 'flushed');
    this.#pending = [];
    const visit = (node: DiskNode) => {
      if (node.kind === 'file') node.flushed = node.content;
      else for (const child of node.entries.values()) visit(child);
    };
    visit(this.#root);
  }

  /** All files with their paths; for tests that damage or compare. */
  files(folder = '/'): Map<string, Uint8Array> {
    const found = new Map<string, Uint8Array>();
    const visit = (node: DiskNode, path: string) => {
      if (node.kind === 'file') found.set(path, node.content);
      else for (const [name, child] of node.entries) visit(child, `${path === '/' ? '' : path}/${name}`);
    };
    const start = this.#find(folder);
    if (start) visit(start, folder);
    return found;
  }

  /** Puts a file there durably, past any fault: damage, an edit by hand, a log to import. */
  plant(path: string, content: Uint8Array): void {
    let folder = this.#root;
    const names = path.split('/').filter((name) => name !== '');
    const last = names.pop() ?? '';
    for (const name of names) {
      const next = folder.entries.get(name) ?? folderNode();
      if (next.kind !== 'folder') throw new Error(`${path} leads through a file`);
      folder.entries.set(name, next);
      folder.flushed.set(name, next);
      folder = next;
    }
    const node: FileNode = { kind: 'file', content, flushed: content, modified_ms: this.now_ms };
    folder.entries.set(last, node);
    folder.flushed.set(last, node);
  }

  /** The disk as programs see it. */
  readonly fs: FileSystem = {
    openRead: async (path) => {
      const node = await this.#step(path, () => this.#file(path));
      let at = 0;
      return {
        read: (into, position) =>
          this.#step(path, () => {
            const from = position ?? at;
            const part = node.content.subarray(from, from + into.length);
            into.set(part);
            if (position === undefined) at += part.length;
            return part.length;
          }),
        state: () => this.#step(path, () => ({ size: node.content.length, modified_ms: node.modified_ms })),
        close: async () => undefined,
      };
    },
    readFile: (path, limit) =>
      this.#step(path, () => {
        const { content } = this.#file(path);
        if (content.length > limit) throw diskError('EFBIG', path);
        return content.slice();
      }),
    createNew: async (path) => {
      const node = await this.#step(path, () => {
        const { folder, name } = this.#parent(path);
        if (folder.entries.has(name)) throw diskError('EEXIST', path);
        const made: FileNode = { kind: 'file', content: zeros, flushed: zeros, modified_ms: this.now_ms };
        this.#change({ remove: null, add: { folder, name, node: made } });
        return made;
      });
      const append = (bytes: Uint8Array) => {
        const longer = new Uint8Array(node.content.length + bytes.length);
        longer.set(node.content);
        longer.set(bytes, node.content.length);
        node.content = longer;
        node.modified_ms = this.now_ms;
      };
      return {
        write: (bytes) =>
          this.#step(
            path,
            () => append(bytes),
            // A full disk takes what still fits.
            () => append(bytes.subarray(0, this.#chance.int(0, bytes.length))),
          ),
        sync: () =>
          this.#step(
            path,
            () => {
              if (!this.#ignoresFlush) node.flushed = node.content;
            },
            // After a failed flush the system may forget the pages, and a second flush would lie.
            () => {
              if (this.#chance.share() < 0.5) node.content = node.flushed;
            },
          ),
        close: async () => undefined,
      };
    },
    rename: (from, to) =>
      this.#step(from, () => {
        const source = this.#parent(from);
        const node = source.folder.entries.get(source.name);
        if (!node) throw diskError('ENOENT', from);
        const target = this.#parent(to);
        const standing = target.folder.entries.get(target.name);
        if (standing?.kind === 'folder' && standing.entries.size > 0) throw diskError('ENOTEMPTY', to);
        if (standing && standing.kind !== node.kind) throw diskError('EISDIR', to);
        this.#change({ remove: source, add: { ...target, node } });
      }),
    makeFolder: (path) =>
      this.#step(path, () => {
        const { folder, name } = this.#parent(path);
        if (folder.entries.has(name)) throw diskError('EEXIST', path);
        this.#change({ remove: null, add: { folder, name, node: folderNode() } });
      }),
    removeFile: (path) =>
      this.#step(path, () => {
        this.#file(path);
        this.#change({ remove: this.#parent(path), add: null });
      }),
    removeFolder: (path) =>
      this.#step(path, () => {
        if (this.#folder(path).entries.size > 0) throw diskError('ENOTEMPTY', path);
        this.#change({ remove: this.#parent(path), add: null });
      }),
    list: (path) =>
      this.#step(path, () =>
        [...this.#folder(path).entries]
          .map(([name, node]) => ({ name, kind: node.kind }))
          .sort((a, b) => (a.name < b.name ? -1 : 1)),
      ),
    stat: (path) =>
      this.#step(path, () => {
        const node = this.#find(path);
        if (!node) return null;
        if (node.kind === 'folder') return { kind: 'folder', size: 0, modified_ms: 0 };
        return { kind: 'file', size: node.content.length, modified_ms: node.modified_ms };
      }),
    syncFolder: (path) =>
      this.#step(path, () => {
        const folder = this.#folder(path);
        if (this.#ignoresFlush) return;
        const isHere = (c: NameChange) => c.add?.folder === folder || c.remove?.folder === folder;
        for (const change of this.#pending.filter(isHere)) apply(change, 'flushed');
        this.#pending = this.#pending.filter((change) => !isHere(change));
      }),
    touch: async (path) => {
      const node = this.#find(path);
      if (node?.kind === 'file') node.modified_ms = this.now_ms;
    },
    setReadOnly: (path) =>
      this.#step(path, () => {
        this.#file(path);
      }),
  };

  /** One operation: counted, and failed where the fault says so; `halfway` is what a failing one still does. */
  async #step<T>(path: string, action: () => T, halfway?: () => void): Promise<T> {
    if (this.#isDead) throw new PowerCut();
    const fault = this.#fault;
    this.#count++;
    const late = fault ? this.#count - fault.operation : -1;
    if (!fault || late < 0 || late > fault.lasting) return action();
    if (fault.what === 'cut') {
      this.#isDead = true;
      if (fault.after) action();
      else halfway?.();
      throw new PowerCut();
    }
    if (fault.after) action();
    else halfway?.();
    throw diskError(fault.what, path);
  }

  #change(change: NameChange): void {
    apply(change, 'entries');
    this.#pending.push(change);
  }

  #find(path: string): DiskNode | undefined {
    let node: DiskNode | undefined = this.#root;
    for (const name of path.split('/')) {
      if (name === '') continue;
      node = node?.kind === 'folder' ? node.entries.get(name) : undefined;
    }
    return node;
  }

  #file(path: string): FileNode {
    const node = this.#find(path);
    if (!node) throw diskError('ENOENT', path);
    if (node.kind !== 'file') throw diskError('EISDIR', path);
    return node;
  }

  #folder(path: string): FolderNode {
    const node = this.#find(path);
    if (!node) throw diskError('ENOENT', path);
    if (node.kind !== 'folder') throw diskError('ENOTDIR', path);
    return node;
  }

  #parent(path: string): { folder: FolderNode; name: string } {
    const at = path.lastIndexOf('/');
    return { folder: this.#folder(path.slice(0, at)), name: path.slice(at + 1) };
  }
}

function folderNode(): FolderNode {
  return { kind: 'folder', entries: new Map(), flushed: new Map() };
}

function apply({ remove, add }: NameChange, side: 'entries' | 'flushed'): void {
  remove?.folder[side].delete(remove.name);
  add?.folder[side].set(add.name, add.node);
}
