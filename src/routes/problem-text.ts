/**
 * @param key what is wrong, as a form says it; undefined if nothing is
 * @param catalogues texts by such keys: the first that has it tells
 * @returns the words for it; of a key that no catalogue has, the first words of the last, so that nothing is silent
 */
export function problemText(key: string | undefined, ...catalogues: readonly Readonly<Record<string, string>>[]): string | undefined {
	if (key === undefined) return undefined;
	const found = catalogues.find((one) => Object.hasOwn(one, key));
	return found === undefined ? Object.values(catalogues.at(-1) ?? {})[0] : found[key];
}
