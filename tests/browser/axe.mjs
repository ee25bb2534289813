// What axe-core says against a page.

import assert from 'node:assert/strict';
import axe from 'axe-core';

/** All that WCAG 2.2 A and AA ask and axe-core can test, and its own best practice. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe-core says against the page as it now stands, one line a node. */
export async function complaints(page) {
  await page.evaluate(axe.source);
  const result = await page.evaluate(
    (values) =>
      globalThis.axe.run(document, { runOnly: { type: 'tag', values }, resultTypes: ['violations', 'incomplete'] }),
    TAGS,
  );
  assert.ok(result.passes.length > 20, `axe-core ran ${result.passes.length} rules that pass`);
  const lines = (rules) =>
    rules.flatMap((rule) =>
      rule.nodes.map((node) => {
        const messages = [...node.any, ...node.all, ...node.none].map((check) => check.message);
        return `${rule.id}: ${node.target.join(' ')}: ${messages.join('; ')}`;
      }),
    );
  // Contrast within pictures is measured in access.mjs.
  const drawn = (node) => /^<(text|tspan)\b/.test(node.html);
  const unsure = result.incomplete.map((rule) => ({ ...rule, nodes: rule.nodes.filter((node) => !drawn(node)) }));
  return { violations: lines(result.violations), unsure: lines(unsure) };
}
