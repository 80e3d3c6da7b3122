import { describe, expect, test } from 'vitest';
import { createOutbox, type Posted, type SendOutcome, type Shelf } from '#lib/flow/index.ts';

function shelf(start: string | null = null): Shelf & { text: string | null } {
	return {
		text: start,
		read() {
			return this.text;
		},
		write(text) {
			this.text = text;
		}
	};
}

const posted = (id: string): Posted => ({ id, body: { answer: id } });
const stored: SendOutcome = { kind: 'stored', grades: {} };

describe('answers that wait', () => {
	test('are sent oldest first, and leave the box once they are stored', async () => {
		const sent: string[] = [];
		const box = createOutbox(shelf(), async ({ id }) => {
			sent.push(id);
			return stored;
		});
		for (const id of ['a', 'b', 'c']) box.put(posted(id));
		const told: string[] = [];
		await box.flush((id, outcome) => told.push(`${id} ${outcome.kind}`));
		expect(sent).toEqual(['a', 'b', 'c']);
		expect(told).toEqual(['a stored', 'b stored', 'c stored']);
		expect(box.waiting()).toBe(0);
	});

	test('stay, all of them, while there is no signal; only the first is tried', async () => {
		const sent: string[] = [];
		const box = createOutbox(shelf(), async ({ id }) => {
			sent.push(id);
			return { kind: 'later' };
		});
		box.put(posted('a'));
		box.put(posted('b'));
		await box.flush(() => undefined);
		expect(sent).toEqual(['a']);
		expect(box.ids()).toEqual(['a', 'b']);
	});

	test('are dropped when the server will never take them, and the next is sent', async () => {
		const box = createOutbox(shelf(), async ({ id }) => (id === 'a' ? { kind: 'refused' } : stored));
		box.put(posted('a'));
		box.put(posted('b'));
		const told: string[] = [];
		await box.flush((id, outcome) => told.push(`${id} ${outcome.kind}`));
		expect(told).toEqual(['a refused', 'b stored']);
		expect(box.waiting()).toBe(0);
	});

	test('survive a closed page: another box on the same shelf has them', () => {
		const place = shelf();
		createOutbox(place, async () => stored).put(posted('a'));
		expect(createOutbox(place, async () => stored).ids()).toEqual(['a']);
	});

	test('stand in the box once, and as they were first', () => {
		const place = shelf();
		const box = createOutbox(place, async () => stored);
		box.put(posted('a'));
		box.put({ id: 'a', body: { answer: 'other' } });
		expect(JSON.parse(place.text ?? '')).toEqual([{ id: 'a', body: { answer: 'a' } }]);
	});

	test('are sent once, though two calls come at the same time, and one put meanwhile goes with them', async () => {
		const sent: string[] = [];
		const box = createOutbox(shelf(), async ({ id }) => {
			sent.push(id);
			if (id === 'a') box.put(posted('b'));
			await Promise.resolve();
			return stored;
		});
		box.put(posted('a'));
		await Promise.all([box.flush(() => undefined), box.flush(() => undefined)]);
		expect(sent).toEqual(['a', 'b']);
		expect(box.waiting()).toBe(0);
	});

	test.each(['{', '7', '{"a":1}', '[1,null,{"id":2,"body":{}},{"id":"x"}]'])('a broken shelf is an empty box: %s', (text) => {
		const box = createOutbox(shelf(text), async () => stored);
		expect(box.waiting()).toBe(0);
		box.put(posted('a'));
		expect(box.ids()).toEqual(['a']);
	});
});
