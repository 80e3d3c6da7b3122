/** Long JSON documents, written piece by piece. */

/** A member of the document: its name, and a value, or the items of a list as pages of them. */
export type Member = readonly [name: string, value: unknown] | readonly [name: string, items: AsyncIterable<readonly unknown[]>];

function isStream(value: unknown): value is AsyncIterable<readonly unknown[]> {
	return typeof value === 'object' && value !== null && Symbol.asyncIterator in value;
}

/** @returns one JSON object as text, in parts. Until the last part it is no JSON: what breaks off does not look whole. */
export async function* jsonOf(members: readonly Member[]): AsyncGenerator<string, void, undefined> {
	let before = '{\n';
	for (const [name, value] of members) {
		yield `${before}${JSON.stringify(name)}:`;
		before = ',\n';
		if (isStream(value)) yield* listOf(value);
		else yield JSON.stringify(value);
	}
	yield '\n}\n';
}

async function* listOf(itemPages: AsyncIterable<readonly unknown[]>): AsyncGenerator<string, void, undefined> {
	yield '[';
	let before = '\n';
	for await (const items of itemPages) {
		if (items.length === 0) continue;
		yield before + items.map((item) => JSON.stringify(item)).join(',\n');
		before = ',\n';
	}
	yield ']';
}
