/** What a job did, in words. */
import type { ToldReport } from '#lib/server/index.ts';
import type { EmployerMessages } from '#lib/text/index.ts';

type Words = EmployerMessages['keeping'];

/** A report as it is told: how it ended, and what it did. */
export interface SaidReport {
	readonly ended: string;
	readonly detail: string;
}

/** @param count writes a whole number in the language of the page */
export function saidReport({ job, failed, did }: ToldReport, words: Words, count: (value: number) => string): SaidReport {
	if (failed) return { ended: words.jobFailed, detail: words.did.failed };
	const counted = (...names: readonly string[]): string => count(names.reduce((sum, name) => sum + Number(did[name] ?? 0), 0));
	const done = (detail: string): SaidReport => ({ ended: words.done, detail });
	const said = words.did;
	switch (job) {
		case 'chain-check':
			return done(did['holds'] === true ? said.holds({ entries: counted('entries'), people: counted('people') }) : said.broken);
		case 'checkpoint':
			return done(did['size'] === 0 ? said.nothingNew : said.made({ entries: counted('size') }));
		case 'forget-names':
			return done(did['kept'] === 'always' ? said.always : said.names({ forgotten: counted('forgotten'), kept: counted('keptNotLongEnough', 'keptSigned') }));
		case 'backup':
			if (did['notDone'] !== undefined) return { ended: words.notDone, detail: did['notDone'] === 'off' ? said.off : said.none };
			return done(said.backup({ file: String(did['file'] ?? ''), removed: counted('removed') }));
	}
}
