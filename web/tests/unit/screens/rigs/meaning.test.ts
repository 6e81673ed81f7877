import { describe, expect, test } from 'vitest';
import { isBare, numberMeant, quantityMeant, unitIn } from '../../../../src/screens/rigs/meaning';

describe('what is typed', () => {
  test('a bare number takes the unit beside the field, a quantity keeps its own', () => {
    expect(quantityMeant('20', 'ft')).toBe('20 ft');
    expect(quantityMeant(' 0.8 ', 'mm')).toBe('0.8 mm');
    expect(quantityMeant('6 m', 'ft')).toBe('6 m');
    expect(quantityMeant('none', 'lb')).toBe('none');
    expect(quantityMeant('', 'ft')).toBe('');
    expect(quantityMeant('1,5', 'ft')).toBe('1,5');
  });
  test('bare is a number alone', () => {
    expect(['3', '3.', '.5', '-1', '+2.5'].every(isBare)).toBe(true);
    expect(['', '3 ft', '1e3', '3..', 'x'].some(isBare)).toBe(false);
  });
  test('a unit is what stands behind the number', () => {
    expect(unitIn('20 ft')).toBe('ft');
    expect(unitIn('0.03N/m')).toBe('N/m');
    expect(unitIn('20')).toBeUndefined();
    expect(unitIn('none')).toBeUndefined();
  });
  test('a coefficient is a number, else a text for the engine to refuse', () => {
    expect(numberMeant('1.2')).toBe(1.2);
    expect(numberMeant('1.')).toBe(1);
    expect(numberMeant('1,2')).toBe('1,2');
    expect(numberMeant(' ')).toBe(' ');
    expect(numberMeant('1e999')).toBe('1e999');
  });
});
