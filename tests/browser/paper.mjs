// The page printed on A4.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { SCHEMES, visit } from './browser.mjs';
import { demoPage, demoRows } from './program.mjs';

// A4 at 96 px an inch.
const A4 = { width: 794, height: 1123 };

/** The size of each page of a PDF, in points. */
function pages(pdf) {
  const text = pdf.toString('latin1');
  const count = [...text.matchAll(/\/Type\s*\/Page(?![s\w])/g)].length;
  const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/g)];
  return { count, boxes: boxes.map((box) => [Number(box[1]), Number(box[2])]) };
}

/** The page as it is laid out for paper: the window as large as what the margins leave. */
async function layOut(page) {
  await page.emulateMedia({ media: 'print' });
  const margin = await page.evaluate(() => {
    const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]);
    const ruler = document.createElement('div');
    // Where the page asks for none Chromium's own is about a centimetre.
    ruler.style.width = rules.find((each) => each instanceof CSSPageRule)?.style.marginLeft || '1cm';
    document.body.append(ruler);
    const { width } = ruler.getBoundingClientRect();
    ruler.remove();
    return width;
  });
  const room = { width: Math.floor(A4.width - 2 * margin), height: Math.floor(A4.height - 2 * margin) };
  await page.setViewportSize(room);
  return room;
}

for (const scheme of SCHEMES) {
  test(`prints on A4 without wasting pages, from a ${scheme} screen`, async () => {
    await visit(demoPage(), { scheme }, async (page) => {
      const { count, boxes } = pages(await page.pdf({ format: 'A4', preferCSSPageSize: true }));
      for (const [width, height] of boxes) {
        assert.ok(Math.abs(width - 595) < 1.5 && Math.abs(height - 842) < 1.5, `a page of ${width} x ${height} points`);
      }
      const { height: room } = await layOut(page);
      const height = await page.evaluate(() => document.documentElement.scrollHeight);
      // What may not be broken leaves some room at the foot of a page.
      const needed = height / room;
      const all = count >= 2 && count >= 0.8 * needed;
      assert.ok(all && count <= 1.25 * needed + 1, `${count} pages for ${needed.toFixed(1)}`);
      const rows = demoRows().length;
      assert.ok(count <= rows / 2 + 6, `${count} pages: two of ${rows} listings to a page, and six for all else`);
    });
  });
}

test('nothing is cut off on paper, and controls are left out', async () => {
  await visit(demoPage(), {}, async (page) => {
    const room = await layOut(page);
    const beyond = await page.evaluate(() => {
      const right = document.documentElement.clientWidth;
      const named = (e) => `${e.localName}.${e.getAttribute('class') ?? ''} ${e.textContent.trim().slice(0, 40)}`;
      const all = [...document.body.querySelectorAll('*')].filter((e) => e.getClientRects().length > 0);
      const outside = all.filter((e) => e.getBoundingClientRect().right > right + 1).map(named);
      const cut = all
        .filter((e) => !(e instanceof SVGElement) && getComputedStyle(e).overflowX !== 'visible')
        .filter((e) => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 1)
        .map((e) => `cut: ${named(e)}`);
      return [...cut, ...outside];
    });
    assert.deepEqual(beyond.slice(0, 10), [], `${beyond.length} elements are wider than ${room.width} px of paper`);
    // A heading's button stays for its word, without the look of a button.
    assert.equal(await page.locator('select:visible, input:visible, button:visible:not(th button)').count(), 0);
    const edges = await page.$$eval('th button', (all) => all.map((e) => parseFloat(getComputedStyle(e).borderTopWidth)));
    assert.deepEqual(edges.filter((width) => width > 0), [], 'paper cannot be pressed');
    const rows = await page.locator('#listings tr.listing:visible').allInnerTexts();
    assert.deepEqual(demoRows().filter((row, at) => !rows[at]?.includes(row.listing)), []);
  });
});

test('paper is white whatever the screen prefers', async () => {
  await visit(demoPage(), { scheme: 'dark' }, async (page) => {
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const grounds = await page.evaluate(() =>
      ['html', 'body', 'main'].map((name) => getComputedStyle(document.querySelector(name)).backgroundColor),
    );
    for (const ground of grounds) {
      const [red, green, blue, alpha = 1] = ground.match(/[\d.]+/g).map(Number);
      assert.ok(alpha === 0 || Math.min(red, green, blue) > 240, `the ground is ${grounds}`);
    }
  });
});
