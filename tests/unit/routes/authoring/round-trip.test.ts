/** What a form reads off a document never changes it, and what it changes and changes back is as it was. */
import { describe, expect, test } from 'vitest';
import { shippedDocument, SHIPPED_IDS } from '../../../support/shipped-documents.ts';
import { aimShares, failShare } from '../../../../src/routes/crew/scenarios/[scenario]/model/aims.ts';
import { amountsFrom, amountsText, numberFrom, numberText, quantityFrom, quantityText, unitOr } from '../../../../src/routes/crew/scenarios/[scenario]/model/amounts.ts';
import { boundRows, boundText, withBound } from '../../../../src/routes/crew/scenarios/[scenario]/model/constraints.ts';
import { at, documentText, isList, isObject, listAt, put, readDocument, textAt, type Json, type Path } from '../../../../src/routes/crew/scenarios/[scenario]/model/document.ts';
import { drawnFacts, weightsOf, withWeight } from '../../../../src/routes/crew/scenarios/[scenario]/model/facts.ts';
import { namesText, withNames } from '../../../../src/routes/crew/scenarios/[scenario]/model/story.ts';

function* leavesOf(value: Json, path: Path = []): Generator<{ readonly path: Path; readonly value: Json }> {
	if (typeof value !== 'object' || value === null) yield { path, value };
	else if (isList(value)) for (const [i, one] of value.entries()) yield* leavesOf(one, [...path, i]);
	else if (isObject(value)) for (const [key, one] of Object.entries(value)) yield* leavesOf(one, [...path, key]);
}

describe.each(SHIPPED_IDS)('%s', (id) => {
	const document = shippedDocument(id);

	test('is written back as it was read, its fields in their order', () => {
		expect(JSON.stringify(readDocument(documentText(document)))).toBe(JSON.stringify(document));
	});

	test('stays as it is when every field is typed again as the form shows it, in both languages', () => {
		for (const language of ['en', 'es'] as const) {
			let typed: Json = document;
			for (const { path, value } of leavesOf(document)) {
				if (typeof value === 'number') typed = put(typed, path, numberFrom(numberText(value, language), language));
				if (typeof value === 'string' && path[0] === 'base') typed = put(typed, path, quantityFrom(quantityText(value, language), language));
			}
			for (const row of boundRows(typed)) typed = withBound(typed, row, boundText(typed, row, language), language);
			listAt(typed, ['draws']).forEach((draw, i) => {
				const among = listAt(draw, ['among']);
				if (textAt(draw, ['fact']) !== '' || among.length === 0) return;
				typed = put(typed, ['draws', i, 'among'], [...amountsFrom(amountsText(among, language), unitOr(textAt(among[0] ?? null, ['unit']), 'm'), language)]);
			});
			typed = withNames(typed, namesText(typed));
			expect(typed).toEqual(document);
			expect(JSON.stringify(typed)).toBe(JSON.stringify(document));
		}
	});

	test('tells shares that sum to one, and weights as they are drawn', () => {
		expect(aimShares(document).reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 12);
		expect(failShare(document)).toBeGreaterThan(0);
		for (const fact of drawnFacts(document)) {
			const weights = weightsOf(document, fact);
			let changed: Json = document;
			for (const [state, weight] of weights) changed = withWeight(changed, fact, state, weight);
			expect(changed, fact).toBe(document);
			expect([...weights.values()].reduce((sum, one) => sum + one, 0), fact).toBeGreaterThan(0);
		}
		expect(at(document, ['aims'])).toBeDefined();
	});
});
