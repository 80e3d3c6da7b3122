/** Lines with letters that are written from right to left. Source: Unicode Standard Annex 9, examples in its spirit; from memory. */
import { describe, expect, it } from 'vitest';
import { hasLeftward, inSightOrder } from '#lib/paper/direction.ts';

/** As one sees it from left to right: stretches that are set from right to left stand in angle brackets. */
function seen(line: string): string {
	return inSightOrder(line)
		.map(({ text, leftward }) => (leftward ? `‹${text}›` : text))
		.join('');
}

describe('a line', () => {
	it('of letters from left to right is one stretch', () => {
		expect(hasLeftward('Wen Abara 3')).toBe(false);
		expect(seen('Wen Abara 3')).toBe('Wen Abara 3');
	});

	it('of a name from right to left has its first word at the right', () => {
		expect(hasLeftward('נאדיה רוק')).toBe(true);
		expect(seen('נאדיה רוק')).toBe('‹רוק› ‹נאדיה›');
		expect(seen('محمد عبد الله')).toBe('‹الله› ‹عبد› ‹محمد›');
	});

	it('keeps numbers and letters of the other way in their own order', () => {
		expect(seen('קו 17 צפון')).toBe('‹צפון› 17 ‹קו›');
		expect(seen('محمد (Max) علي')).toBe('‹علي› ‹(›Max‹)› ‹محمد›');
	});

	it('turns brackets round that belong to letters from right to left', () => {
		// In the order of reading; set from right to left, the first of them stands at the right again.
		expect(seen('נאדיה (רוק)')).toBe('‹)רוק(› ‹נאדיה›');
	});

	it('leaves a name within a sentence where it stands, and turns its words', () => {
		expect(seen('At bay 2: נאדיה רוק. Known by card')).toBe('At bay 2: ‹רוק› ‹נאדיה›. Known by card');
		expect(seen('Personal number D-2 קו 17')).toBe('Personal number D-2 17 ‹קו›');
	});

	it('keeps marks with their letters', () => {
		expect(seen('שָׁלוֹם רב')).toBe('‹רב› ‹שָׁלוֹם›');
	});
});
