// A file of a build under a name that says what is in it, and the page told of it.

import { createHash } from 'node:crypto';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const hash = (algorithm, encoding, bytes) => createHash(algorithm).update(bytes).digest(encoding);

/** What a page writes beside an address, for a browser to check what answers. */
export const integrity = (bytes) => `sha384-${hash('sha384', 'base64', bytes)}`;

/** Writes a file as `BEGINNING-HASH.ENDING` and answers that name. */
export function put(dir, beginning, ending, bytes) {
  const name = `${beginning}-${hash('sha256', 'hex', bytes).slice(0, 16)}.${ending}`;
  writeFileSync(join(dir, name), bytes);
  return name;
}

/** Changes the page; it has to differ by it. */
export function tell(dir, change) {
  const index = join(dir, 'index.html');
  const page = readFileSync(index, 'utf8');
  const told = change(page);
  if (told === page) throw new Error('page: what was to change is not there');
  writeFileSync(index, told);
}

/** Puts a file in another's place; answers its name. */
export function replace(dir, old, beginning, ending, bytes) {
  const was = readFileSync(join(dir, old));
  rmSync(join(dir, old));
  const name = put(dir, beginning, ending, bytes);
  tell(dir, (page) => page.replaceAll(old, name).replaceAll(integrity(was), integrity(bytes)));
  return name;
}
