import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { singlePolicy } from '../../../tools/policies.mjs';
import { withinScript, withinStyle } from '../../../tools/single-form.mjs';

describe('a script within the page', () => {
  const words = ['</script>', '</SCRIPT >', '<!-- <script>', '</script <!--', 'a < b', '<script>'];

  test.each(words)('%s does not end it, and stays what it was', (nasty) => {
    const code = withinScript(`return ${JSON.stringify(nasty)}`);
    expect(code).not.toMatch(/<\/script|<!--/i);
    expect(new Function(code)()).toBe(nasty);
  });

  test('a pattern stays what it was', () => {
    const code = withinScript('return /<\\/x|<!--/.source.length + "</script".length');
    expect(new Function(code)()).toBe('<\\/x|<\\!--'.length + 8);
  });
});

test('a style within the page does not end', () => {
  expect(withinStyle('a::after { content: "</style>" }')).not.toMatch(/<\/style/i);
});

test('the policy names script and style by what is in them', () => {
  const hash = createHash('sha256').update('go()').digest('base64');
  const policy = singlePolicy({ script: 'go()', style: 'a{}' });
  expect(policy).toContain(`script-src 'sha256-${hash}' 'wasm-unsafe-eval' blob:`);
  expect(policy).toContain("default-src 'none'");
  expect(policy).not.toMatch(/unsafe-inline|'unsafe-eval'|https?:/);
});
