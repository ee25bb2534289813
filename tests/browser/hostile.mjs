// Text of a listing stays text: a page of hostile names has the same elements as a page of harmless ones.
// All listings here are invented.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { visit } from './browser.mjs';
import { page as made, row, same, written } from './program.mjs';

const MARK = 'globalThis.hostile=1';

/** What a listing may be called by somebody who wants the page to run it, break it or read otherwise than it stands. */
const HOSTILE = [
  `<script>${MARK}</script>`,
  `<img src=x onerror="${MARK}">`,
  `"><svg onload="${MARK}"></svg>`,
  `'><svg/onload='${MARK}'>`,
  `" onmouseover="${MARK}" x="`,
  `' autofocus onfocus='${MARK}' tabindex='0`,
  `javascript:${MARK}`,
  `</title><script>${MARK}</script>`,
  `</style><script>${MARK}</script>`,
  `</script><script>${MARK}</script>`,
  `</svg></td></tr></table><iframe srcdoc="<script>parent.${MARK}</script>"></iframe>`,
  `<!-- <script>${MARK}</script>`,
  `--><b>bold</b>`,
  `]]><script>${MARK}</script>`,
  `<a href="javascript:${MARK}">press</a>`,
  `<style>*{display:none}</style>`,
  `<base href="https://example.invalid/"><link rel="stylesheet" href="x.css">`,
  `<meta http-equiv="refresh" content="0;url=https://example.invalid/">`,
  `<form action="https://example.invalid/"><input name="q"><button>send</button></form>`,
  `&lt;b&gt; &amp; &#60;i&#62; &quot;`,
  `\`\${${MARK}}\` {{${MARK}}}`,
  `grow \u202e thgil \u202c \u2066 panel \u2069 \u200f end`,
  `+<plaintext>`,
  `https://example.invalid/?a=1&b=2`,
];

/** A table of listings of those names; the facts are the same whatever the names. */
function table(names) {
  const header = row(['listing', 'supplier', 'title', 'claim_w', 'class', 'tally']);
  const lines = names.map((name) => row([name, name, name, '300', '3W', '60 deep-red + 20 royal-blue']));
  // A cell that no one can read is quoted in what the page says of it.
  const faults = names.map((name) => row([name, name, name, name, '3W', '60 deep-red']));
  return header + lines.join('') + faults.join('');
}

/** The elements of a page with the names of their attributes, in document order. */
const skeleton = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('*')].map((e) => {
      const depth = (e) => (e.parentElement ? 1 + depth(e.parentElement) : 0);
      return `${depth(e)} ${e.localName} ${e.getAttributeNames().join(' ')}`;
    }),
  );

const hostilePage = () => made(['grade', written(table(HOSTILE))]);

for (const script of [true, false]) {
  test(`hostile names add no element and no attribute, ${script ? 'with' : 'without'} script`, async () => {
    // As many different names, each harmless.
    const harmless = HOSTILE.map((_, at) => `Plain panel ${String.fromCharCode(65 + at)}`);
    let expected;
    await visit(made(['grade', written(table(harmless))]), { script }, async (page) => {
      expected = await skeleton(page);
    });
    await visit(hostilePage(), { script }, async (page) => {
      same(await skeleton(page), expected, 'elements');
    });
  });
}

test('hostile names run nothing, whatever is hovered, focused, pressed, sorted or chosen', async () => {
  await visit(hostilePage(), {}, async (page) => {
    const ran = () => page.evaluate(() => globalThis.hostile);
    const names = await page.$$eval('*', (all) => all.flatMap((e) => e.getAttributeNames()));
    const handlers = names.filter((name) => name.startsWith('on'));
    assert.deepEqual(handlers, [], 'no element has a handler in an attribute');
    const links = await page.$$eval('[href]', (all) => all.map((e) => e.getAttribute('href')));
    assert.deepEqual(links.filter((href) => !/^(#|https:\/\/(?!example\.invalid)|[\w.-]+\.csv$)/.test(href)), []);
    await page.$$eval('*', (all) => {
      for (const e of all) {
        for (const kind of ['mouseover', 'focus', 'load', 'error', 'toggle']) e.dispatchEvent(new Event(kind));
      }
    });
    for (const button of await page.locator('#listings th button').all()) await button.click();
    for (const value of await page.$$eval('#filter-verdict option', (all) => all.map((o) => o.value))) {
      await page.locator('#filter-verdict').selectOption(value);
    }
    assert.equal(await ran(), undefined);
  });
});

test('hostile names are shown as they were written, with what acts unseen as its code', async () => {
  await visit(hostilePage(), {}, async (page) => {
    const rows = await page.$$eval('#listings tr.listing', (all) => all.map((tr) => tr.innerText.replace(/\s+/g, ' ')));
    assert.equal(rows.length, 2 * HOSTILE.length);
    for (const [at, name] of HOSTILE.entries()) {
      const code = (c) => `\\u{${c.codePointAt(0).toString(16)}}`;
      const shown = name.replace(/[\u200b-\u200f\u2028-\u202e\u2060-\u206f]/g, code);
      // A long name may be cut.
      const begin = shown.slice(0, 40);
      for (const line of [rows[at], rows[at + HOSTILE.length]]) {
        assert.ok(line.includes(begin), `${JSON.stringify(begin)} is not in ${JSON.stringify(line)}`);
      }
    }
    const text = await page.evaluate(() => document.documentElement.textContent);
    assert.equal(/[\u202a-\u202e\u2066-\u2069\u200e\u200f]/.test(text), false, 'no mark turns the text round');
  });
});

test('markup that slipped through would still do nothing: the page forbids it', async () => {
  const slipped = [
    `<script>${MARK}</script>`,
    `<img alt="" src="https://example.invalid/x.png" onerror="${MARK}">`,
    `<img alt="" src="data:image/png," onerror="${MARK}">`,
    `<style>@import "https://example.invalid/x.css";</style>`,
    `<iframe title="x" srcdoc="<script>parent.${MARK}</script>"></iframe>`,
    `<svg onload="${MARK}"></svg>`,
  ];
  const html = readFileSync(hostilePage(), 'utf8');
  for (const markup of slipped) {
    const file = written(html.replace('<main>', `<main>${markup}`), 'html');
    await visit(file, { silent: false }, async (page) => {
      await page.waitForLoadState('load');
      assert.equal(await page.evaluate(() => globalThis.hostile), undefined, markup);
      assert.ok((await page.locator('#listings th button').count()) > 0, 'while its own script runs');
    });
  }
});

for (const [what, title] of HOSTILE.entries()) {
  if (what % 4 !== 0) continue;
  test(`one light of a hostile title: ${JSON.stringify(title)}`, async () => {
    const facts = ['--claim', '300', '--class', '3W', '--tally', '60 deep-red + 20 royal-blue'];
    const light = (title) => made(['vet', ...facts, '--', title]);
    let expected;
    await visit(light('Plain panel'), {}, async (page) => {
      expected = await skeleton(page);
    });
    await visit(light(title), {}, async (page) => {
      same(await skeleton(page), expected, 'elements');
      assert.equal(await page.evaluate(() => globalThis.hostile), undefined);
    });
  });
}
