// Every verdict and figure that the CSV gives is in the page, in the listing's row or its details: for eyes, and in the
// tree that a screen reader is given.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { visit, WIDTHS } from './browser.mjs';
import { demoPage, demoRows, number } from './program.mjs';

/** The figures of a listing's details, by column of the CSV. */
const FIGURES = ['led_w', 'wall_w', 'wall_low_w', 'wall_high_w', 'common_low_w', 'common_high_w', 'needed_ma'];

/** The numbers that stand in a text, as written. */
const numbers = (text) => [...text.matchAll(/(?<![\w.])\d+(?:\.\d+)?/g)].map((found) => found[0]);

/** Whether a text has `value`, rounded as far as it is written and to no fewer than two digits. */
const says = (text, value) => numbers(text).some((written) => isRounded(written, value));

function isRounded(written, value) {
  const decimals = written.split('.')[1]?.length ?? 0;
  // CSV has six digits: the page may have rounded what lies behind them.
  const faithful = Math.abs(Number(written) - value) <= 0.5 * 10 ** -decimals + 1e-5 * value;
  const digits = written.replace('.', '').replace(/^0+/, '').length;
  return faithful && (digits >= 2 || decimals > 0 || value < 10);
}

/** What a row of the CSV has that its row of the page does not say. */
function missingInRow(row, text) {
  const words = ['listing', 'supplier', 'verdict', 'evidence'].filter((column) => !text.includes(row[column]));
  const figures = { claim_w: 1, share: 100 };
  // A reading takes the place of the range.
  if (row.evidence !== 'measured') Object.assign(figures, { wall_low_w: 1, wall_high_w: 1 });
  return [...words, ...Object.keys(figures).filter((column) => lacks(row, column, text, figures[column]))];
}

/** What a row of the CSV has that its details in the page do not say. */
function missingInDetails(row, text) {
  const codes = row.reasons.split(' ').filter((code) => code !== '');
  // Why a row could not be read is said in words.
  const reasons = row.verdict === 'unreadable' ? [] : codes;
  const words = [row.listing, row.verdict, row.basis, ...reasons].filter((word) => !text.includes(word));
  return [...words, ...[...FIGURES, 'claim_w'].filter((column) => lacks(row, column, text))];
}

function lacks(row, column, text, times = 1) {
  const value = number(row[column]);
  return value !== null && !says(text, value * times);
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
          details: document.querySelector(tr.querySelector('th a').getAttribute('href')).innerText,
        })),
      );
      const rows = demoRows();
      assert.equal(shown.length, rows.length);
      assert.ok(new Set(rows.map((row) => row.verdict)).size >= 6, 'the demo listings have many verdicts');
      assert.deepEqual(shown.map((s) => s.data), rows.map((row) => row.verdict));
      for (const [at, row] of rows.entries()) {
        assert.ok(one(shown[at].verdict).split(' ').includes(row.verdict), `${row.listing}: ${shown[at].verdict}`);
        const { text, details } = shown[at];
        assert.deepEqual(missingInRow(row, one(text)), [], `${row.listing}: ${one(text)}`);
        assert.deepEqual(missingInDetails(row, one(details)), [], `${row.listing}: ${one(details)}`);
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
            assert.ok(says(shown[at][cell], value * times), name);
            assert.ok(Math.abs(Number(raw) - value) <= 1e-5 * value, name);
          }
        }
      }
    });
  });
}

/**
 * What Chromium's accessibility tree, which a screen reader is given, has of a role within an element: texts, and the roles
 * of the nodes below.
 */
async function heard(page, within, role) {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  const { root } = await session.send('DOM.getDocument');
  const { nodeId } = await session.send('DOM.querySelector', { nodeId: root.nodeId, selector: within });
  const { node: element } = await session.send('DOM.describeNode', { nodeId });
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const below = (node) => (node.childIds ?? []).map((id) => byId.get(id)).filter((child) => child !== undefined);
  const all = (node) => [node, ...below(node).flatMap(all)];
  const heardOf = (node) => !node.ignored && node.role?.value !== 'InlineTextBox';
  const top = nodes.find((node) => node.backendDOMNodeId === element.backendNodeId);
  return all(top)
    .filter((node) => heardOf(node) && node.role?.value === role)
    .map((node) => all(node).filter(heardOf))
    .map((nodes) => ({
      text: one(nodes.map((node) => node.name?.value ?? '').join(' ')),
      roles: nodes.map((node) => node.role?.value),
    }));
}

for (const width of WIDTHS) {
  test(`a screen reader is given every verdict and figure, at ${width} px`, async () => {
    await visit(demoPage(), { width }, async (page) => {
      assert.equal((await heard(page, '#listings', 'table')).length, 1, 'a table, not a heap of cells');
      const rows = (await heard(page, '#listings', 'row')).slice(1);
      const columns = await page.$eval('#listings tr.listing', (tr) => tr.cells.length);
      const details = await heard(page, 'main', 'article');
      assert.deepEqual([rows.length, details.length], [demoRows().length, demoRows().length]);
      for (const [at, row] of demoRows().entries()) {
        assert.deepEqual(missingInRow(row, rows[at].text), [], `${row.listing}: ${rows[at].text}`);
        assert.deepEqual(missingInDetails(row, details[at].text), [], `${row.listing}: ${details[at].text}`);
        // A cell that is left out would put the next under a wrong heading.
        const cells = rows[at].roles.filter((role) => ['rowheader', 'cell'].includes(role));
        assert.deepEqual([cells[0], cells.length], ['rowheader', columns], `${row.listing}: cells`);
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
          const name = svg.getAttribute('aria-label') ?? svg.querySelector(':scope > title')?.textContent ?? '';
          return svg.getAttribute('role') !== 'img' || name.trim() === '';
        })
        .map((svg) => svg.outerHTML.slice(0, 200)),
    );
    assert.deepEqual(bare, []);
    assert.ok((await page.locator('svg').count()) > 0, 'the page draws its pictures');
  });
});
