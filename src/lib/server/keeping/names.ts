/** Names of backups, and which of them a folder keeps. */
import type { Engine } from '../db/migrations.ts';
import { manifestPath } from './manifest.ts';

const ENDINGS: Readonly<Record<Engine, string>> = { sqlite: 'sqlite', postgres: 'pgdump' };

/** `underfoot-20261130T133305123Z.sqlite` */
const NAME = /^underfoot-(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})(\d{3})Z\.(?:sqlite|pgdump)$/;
/** What a backup is called until it is whole. */
const UNFINISHED = /^underfoot-\d{8}T\d{9}Z\.(?:sqlite|pgdump)\.part(?:-journal|-wal|-shm)?$/;

/** How many of the newest are kept. @reason two weeks of days: time enough to notice that something is missing */
export const NEWEST = 14;
/** Of how many months the newest of each is kept. @reason a year, until the next yearly review */
export const MONTHS = 12;

/** A time as it stands in names, UTC. */
export function stampOf(at: Date): string {
	return at.toISOString().replace(/[-:.]/g, '');
}

/** @returns what a backup is called. */
export function backupName(engine: Engine, at: Date): string {
	return `underfoot-${stampOf(at)}.${ENDINGS[engine]}`;
}

/** @returns what it is called until it is whole. */
export function unfinishedName(name: string): string {
	return `${name}.part`;
}

/** @returns when a backup of this name was taken; null for any other file. */
function takenAt(name: string): Date | null {
	const found = NAME.exec(name);
	if (found === null) return null;
	const [year, month, day, hour, minute, second, milli] = found.slice(1);
	const at = new Date(`${year}-${month}-${day}T${hour}:${minute}:${second}.${milli}Z`);
	return Number.isNaN(at.getTime()) ? null : at;
}

/** How long an unfinished backup may be another's that still runs, ms. */
const STILL_RUNS = 24 * 60 * 60 * 1000;

/**
 * Which files of a folder of backups may go: all but the newest fourteen, and the newest of each of the last twelve months
 * there are. Nothing but backups and what belongs to them is ever named; neither is one from the future, for then a
 * clock was or is wrong.
 * @param names of all files in the folder
 */
export function dispensable(names: readonly string[], now: Date): readonly string[] {
	const backups = names
		.flatMap((name) => {
			const at = takenAt(name);
			return at === null || at > now ? [] : [{ name, at }];
		})
		.toSorted((a, b) => b.at.getTime() - a.at.getTime() || (a.name < b.name ? -1 : 1));
	const months = new Map<string, string>();
	for (const { name, at } of backups) {
		const month = at.toISOString().slice(0, 7);
		if (!months.has(month)) months.set(month, name);
	}
	const keep = new Set([...backups.slice(0, NEWEST).map(({ name }) => name), ...[...months.values()].slice(0, MONTHS)]);
	const there = new Set(names);
	const old = backups.flatMap(({ name }) => (keep.has(name) ? [] : [name, manifestPath(name)])).filter((name) => there.has(name));
	return [...old, ...names.filter((name) => isAbandoned(name, now))];
}

function isAbandoned(name: string, now: Date): boolean {
	if (!UNFINISHED.test(name)) return false;
	const at = takenAt(name.slice(0, name.indexOf('.part')));
	return at !== null && now.getTime() - at.getTime() > STILL_RUNS;
}
