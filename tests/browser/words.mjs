// Every verdict and figure that the CSV gives is in the page: for eyes, and in the tree that a screen reader is given.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { visit, WIDTHS } from './browser.mjs';
import { demoPage, demoRows, number } from './program.mjs';

const FIGURES = ['claim_w', 'led_w', 'wall_w', 'share'];

/** The numbers that stand in a text, as written; thousands may be set off by a space. */
const numbers = (text) =>
  [...text.matchAll(/(?<![\w.])\d{1,3}(?:[\u00a0\u2009\u202f]\d{3})+(?!\d)|(?<![\w.])\d+(?:\.\d+)?/g)].map((m) =>
    m[0].replace(/\s/g, ''),
  );

/** Whether `written` is `value` rounded as far as it is written, and to no fewer than two digits. */
function says(written, value) {
  const decimals = written.split('.')[1]?.length ?? 0;
  const half = 0.5 * 10 ** -decimals;
  // CSV has six digits: the page may have rounded what lies behind them.
  const faithful = Math.abs(Number(written) - value) <= half + 1e-5 * value;
  const digits = written.replace('.', '').replace(/^0+/, '').length;
  return faithful && (digits >= 2 || decimals > 0 || value < 10);
}

/** What a row of the CSV has that its text in the page does not. */
function missing(row, text) {
  const words = numbers(text);
  const lacks = FIGURES.filter((column) => {
    const value = number(row[column]);
    return value !== null && !words.some((w) => says(w, column === 'share' ? value * 100 : value));
  }).map((column) => `${column} ${row[column]}`);
  for (const column of ['listing', 'supplier', 'verdict']) {
    if (!text.includes(row[column])) lacks.push(`${column} ${row[column]}`);
  }
  return lacks.map((lack) => `${row.listing}: no ${lack} in: ${text}`);
}

const one = (text) => text.replace(/[ \n\t]+/g, ' ').trim();

for (const script of [true, false]) {
  test(`every verdict and figure of the CSV can be read, in its order, ${script ? 'with' : 'without'} script`, async () => {
    await visit(demoPage(), { script }, async (page) => {
      const shown = await page.$$eval('#listings tr.listing', (all) =>
        all.map((tr) => ({
          verdict: tr.querySelector('td.verdict').innerText,
          data: tr.dataset.verdict,
          claim: tr.querySelector('td.claim').innerText,
          share: tr.querySelector('td.share').innerText,
          raw: ['claim', 'share'].map((cell) => tr.querySelector(`td.${cell}`).dataset.sort),
          text: tr.innerText,
        })),
      );
      const rows = demoRows();
      assert.equal(shown.length, rows.length);
      assert.ok(new Set(rows.map((row) => row.verdict)).size >= 6, 'the demo listings have many verdicts');
      assert.deepEqual(shown.map((s) => s.data), rows.map((row) => row.verdict));
      for (const [at, row] of rows.entries()) {
        assert.ok(one(shown[at].verdict).split(' ').includes(row.verdict), `${row.listing}: ${shown[at].verdict}`);
        assert.deepEqual(missing(row, one(shown[at].text)), []);
        for (const [cell, column, times, raw] of [
          ['claim', 'claim_w', 1, shown[at].raw[0]],
          ['share', 'share', 100, shown[at].raw[1]],
        ]) {
          const value = number(row[column]);
          const name = `${row.listing}: ${column} ${row[column]}, shown ${shown[at][cell]}, to sort by ${raw}`;
          if (value === null) {
            assert.equal(numbers(shown[at][cell]).length, 0, `${name}: what is absent is not a number`);
            assert.equal(raw ?? '', '', name);
          } else {
            assert.ok(numbers(shown[at][cell]).some((w) => says(w, value * times)), name);
            assert.ok(Math.abs(Number(raw) - value) <= 1e-5 * value, name);
          }
        }
      }
    });
  });
}

/** The names of each table row's descendants in Chromium's accessibility tree. */
async function rowsToHear(page) {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const heard = (node) => {
    const below = (node.childIds ?? []).flatMap((id) => (byId.has(id) ? heard(byId.get(id)) : []));
    const name = node.ignored || node.role?.value === 'InlineTextBox' ? '' : node.name?.value;
    return [...(name ? [name] : []), ...below];
  };
  return nodes
    .filter((node) => !node.ignored && node.role?.value === 'row')
    .map((node) => {
      const kinds = (node.childIds ?? []).map((id) => byId.get(id)).filter((n) => n && !n.ignored);
      return { text: one(heard(node).join(' ')), cells: kinds.map((n) => n.role?.value) };
    });
}

for (const width of WIDTHS) {
  test(`a screen reader is given every verdict and figure in the cells of a table, at ${width} px`, async () => {
    await visit(demoPage(), { width }, async (page) => {
      const heard = await rowsToHear(page);
      const used = new Set();
      for (const row of demoRows()) {
        const at = heard.findIndex((r, at) => !used.has(at) && missing(row, r.text).length === 0);
        const near = heard.filter((r) => r.text.includes(row.listing)).map((r) => missing(row, r.text));
        assert.notEqual(at, -1, `${row.listing} is in no row; the nearest: ${JSON.stringify(near)}`);
        assert.ok(!used.has(at));
        used.add(at);
        const cells = heard[at].cells.filter((role) => ['cell', 'gridcell', 'rowheader'].includes(role));
        assert.ok(cells.length >= 5, `${row.listing}: cells ${heard[at].cells}`);
      }
    });
  });
}

test('every picture has a name', async () => {
  await visit(demoPage(), {}, async (page) => {
    const bare = await page.$$eval('svg', (all) =>
      all
        .filter((svg) => !svg.closest('[aria-hidden="true"]'))
        .filter((svg) => {
          const by = (svg.getAttribute('aria-labelledby') ?? '').split(' ').filter(Boolean);
          const named = by.length > 0 && by.every((id) => document.getElementById(id)?.textContent.trim());
          return svg.getAttribute('role') !== 'img' || !(named || svg.getAttribute('aria-label') || svg.querySelector(':scope > title'));
        })
        .map((svg) => svg.outerHTML.slice(0, 200)),
    );
    assert.deepEqual(bare, []);
    assert.ok((await page.locator('svg').count()) > 0, 'the page draws its pictures');
  });
});
