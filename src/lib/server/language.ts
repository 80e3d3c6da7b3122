/** One entry of an Accept-Language header: a language and how much it is wanted, 0 to 1. */
function wanted(entry: string): { language: string; weight: number } {
	const [tag = '', ...parameters] = entry.split(';').map((part) => part.trim().toLowerCase());
	const quality = parameters.find((parameter) => parameter.startsWith('q='));
	const weight = quality === undefined ? 1 : Number(quality.slice(2));
	return { language: tag.split('-')[0] ?? '', weight: Number.isFinite(weight) ? weight : 0 };
}

/**
 * The language of a visitor's pages.
 * @param offered the languages there are, as primary tags (`en`); the first is for whoever wants none of them
 * @param chosen what the visitor chose before, if anything
 * @param accepted the browser's Accept-Language header
 */
export function chooseLanguage<Language extends string>(
	offered: readonly [Language, ...Language[]],
	chosen: string | undefined,
	accepted: string | null
): Language {
	const known = (tag: string | undefined) => offered.find((language) => language === tag);
	const byChoice = known(chosen);
	if (byChoice !== undefined) return byChoice;
	const byBrowser = (accepted ?? '')
		.split(',')
		.map(wanted)
		.filter((entry) => entry.weight > 0)
		.sort((a, b) => b.weight - a.weight)
		.map((entry) => known(entry.language))
		.find((language) => language !== undefined);
	return byBrowser ?? offered[0];
}
