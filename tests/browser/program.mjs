// The program under test, and what its CSV says: the page is held against that, never against itself.

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { after } from 'node:test';
import { fileURLToPath } from 'node:url';

/** The top of the project. */
export const HOME = fileURLToPath(new URL('../..', import.meta.url));

/** The invented listings that the README shows. */
export const DEMO = join(HOME, 'demo-data/listings.csv');

const program = resolve(process.env.PLAINWATT_BIN ?? join(HOME, 'target/debug/plainwatt'));

const place = mkdtempSync(join(tmpdir(), 'plainwatt-browser-'));
after(() => rmSync(place, { recursive: true, force: true }));

let made = 0;

/** Runs the program on `args`, and gives what it prints on standard output. */
export function run(args) {
  const ran = spawnSync(program, args, { encoding: 'utf8', cwd: HOME });
  assert.ifError(ran.error);
  assert.equal(ran.status, 0, `${program} ${args.join(' ')}: ${ran.stderr}`);
  return ran.stdout;
}

/** Writes `text` to a new file that lives as long as the run. */
export function written(text, ending = 'csv') {
  const file = join(place, `${(made += 1)}.${ending}`);
  writeFileSync(file, text);
  return file;
}

/** The page that `args` make. */
export function page(args) {
  const file = written('', 'html');
  const [command, ...rest] = args;
  run([command, '--format', 'html', '-o', file, ...rest]);
  return file;
}

/** The rows of a CSV text, each an object by header; quotes as in RFC 4180. */
export function rows(text) {
  const records = [[]];
  const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r?\n|$)/y;
  while (cell.lastIndex < text.length) {
    const from = cell.lastIndex;
    const found = cell.exec(text);
    assert.ok(found, `not CSV: ${JSON.stringify(text.slice(from, from + 100))}`);
    const [, quoted, bare, end] = found;
    records.at(-1).push(quoted === undefined ? bare : quoted.replaceAll('""', '"'));
    if (end !== ',') records.push([]);
  }
  const [header, ...lines] = records.filter((record) => record.length > 0);
  return lines.map((line) => Object.fromEntries(header.map((name, at) => [name, line[at]])));
}

/** A row of CSV, every cell quoted. */
export const row = (cells) => `${cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(',')}\n`;

/** A cell's number, or null where there is none: what is absent is not zero. */
export const number = (cell) => (cell === '' ? null : Number(cell));

/** Fails at the first place where two lists differ; a full comparison of long lists takes minutes to print. */
export function same(found, expected, what) {
  const at = Array.from({ length: Math.max(found.length, expected.length) }, (_, at) => at);
  const first = at.find((at) => found[at] !== expected[at]);
  if (first !== undefined) assert.fail(`${what}: at ${first} ${found[first]}\nnot ${expected[first]}`);
}

/** The page of the demo listings, made once. */
export const demoPage = once(() => page(['grade', DEMO]));

/** What the program's CSV says of the demo listings, without the guard for spreadsheets. */
export const demoRows = once(() => rows(run(['grade', DEMO, '--format', 'csv', '--raw'])));

function once(make) {
  let value;
  return () => (value ??= make());
}
