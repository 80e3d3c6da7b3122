/** From the catalogue and what is shown to the words of a picture; and from a grade to its explanation. */
import { sourcesOf, type Picture, type PictureGrade, type Shown, type ShownPart } from '#lib/findings/index.ts';
import type { Messages } from '#lib/text/index.ts';
import type { FindingWords } from './FindingPicture.svelte';

/** How quantities are written on this page, with their unit. */
export interface FindingFormats {
	/** m */
	readonly length: (metres: number) => string;
	/** s */
	readonly time: (seconds: number) => string;
	/** m/s */
	readonly speed: (metresASecond: number) => string;
	/** A plain number. */
	readonly number: (value: number) => string;
}

/** One part in the explanation. */
export interface FindingNoteWords {
	readonly id: string;
	readonly number: number;
	readonly name: string;
	readonly see: string;
	/** How it was marked: a reject sign that was found or missed, a mark too many, or nothing to say. */
	readonly state: 'found' | 'missed' | 'extra' | 'quiet';
	readonly stateText: string;
	readonly title: string;
	readonly why: string;
	/** Empty for a moment of a fall: said once, in the closing lines. */
	readonly act: string;
	readonly source: string;
}

export interface FindingExplanation {
	readonly summary: readonly string[];
	/** What was missed first, then what was marked for nothing, what was found, and the rest. */
	readonly notes: readonly FindingNoteWords[];
	readonly closing: readonly string[];
}

type Findings = Messages['findings'];

function own<T>(of: Readonly<Record<string, T>>, key: string): T | undefined {
	return Object.hasOwn(of, key) ? of[key] : undefined;
}

/** @returns the name of a part. @throws RangeError on one that the catalogue does not have. */
export function partName(findings: Findings, id: string): string {
	const plain = own<string>(findings.parts, id);
	if (plain !== undefined) return plain;
	const counted = /^(.+)-(\d+)$/.exec(id);
	const name = counted === null ? undefined : own(findings.counted, counted[1] ?? '');
	if (name === undefined) throw new RangeError(`the message catalogue has no part "${id}"`);
	return name({ n: counted?.[2] ?? '' });
}

function seenOf(findings: Findings, shown: Shown, part: Pick<ShownPart, 'form' | 'look' | 'numbers'>, formats: FindingFormats): string {
	if (part.form === 'term') return findings.termSeen({ length: formats.length(part.numbers?.['length'] ?? 0) });
	if (part.form === 'moment') return momentSeen(findings, part.numbers ?? {}, formats);
	const looks = own<Readonly<Record<string, string>>>(findings.looks, part.form);
	const seen = looks === undefined ? undefined : own(looks, part.look);
	if (seen === undefined) throw new RangeError(`the message catalogue has no look "${part.look}" of a ${part.form} in ${shown.task}`);
	return seen;
}

function momentSeen(findings: Findings, numbers: Readonly<Record<string, number>>, formats: FindingFormats): string {
	const soles = 0 - (numbers['soles'] ?? 0);
	const deployed = numbers['deployed'] ?? 0;
	if (soles < 0.001) return findings.standsStill;
	return findings.momentSeen({
		soles: formats.length(soles),
		line: deployed > 0 ? findings.lineTight({ run: formats.length(deployed) }) : findings.lineSlack
	});
}

/** @returns the words of a picture. @throws RangeError if the catalogue lacks one of them. */
export function findingWords(messages: Messages, shown: Shown, formats: FindingFormats): FindingWords {
	const { findings } = messages;
	const task = own(findings.tasks, shown.task);
	if (task === undefined) throw new RangeError(`the message catalogue has no picture task "${shown.task}"`);
	const { numbers } = shown;
	const inside: Record<string, string> = {};
	for (const part of shown.parts) {
		if (part.form !== 'term') continue;
		inside[`name:${part.id}`] = partName(findings, part.id);
		inside[`length:${part.id}`] = formats.length(part.numbers?.['length'] ?? 0);
	}
	if (numbers['fallen'] !== undefined) inside['fallen'] = formats.length(numbers['fallen']);
	return {
		title: task.title,
		lead: task.lead,
		description: described(findings, shown, formats),
		ask: task.ask,
		nothing: findings.nothing,
		list: findings.list,
		parts: Object.fromEntries(
			shown.parts.map((part) => [part.id, { name: partName(findings, part.id), see: seenOf(findings, shown, part, formats) }])
		),
		choose: task.choose,
		choices: Object.fromEntries(shown.choices.map((one) => [one.id, choiceText(findings, one, formats)])),
		inside
	};
}

/** What a picture of a fall shows beside its parts, for those who do not see it. */
function described(findings: Findings, shown: Shown, formats: FindingFormats): string {
	const { numbers } = shown;
	if (shown.kind !== 'moment') return '';
	const of = (id: string): number => numbers[id] ?? 0;
	const said = [
		findings.lengthsSeen({
			lanyard: formats.length(of('lanyard')),
			anchorage: formats.length(of('anchorage')),
			dRing: formats.length(of('dRingHeight'))
		})
	];
	if (shown.drawing === 'one-moment') said.push(momentSeen(findings, numbers, formats));
	if (numbers['fallen'] !== undefined) said.push(findings.fallenSeen({ fallen: formats.length(numbers['fallen']) }));
	if (numbers['framed-dRing'] !== undefined) {
		said.push(findings.framed({ seen: momentSeen(findings, { soles: of('framed-soles'), deployed: of('framed-deployed') }, formats) }));
	}
	return said.join(' ');
}

function choiceText(findings: Findings, choice: Shown['choices'][number], formats: FindingFormats): string {
	if (choice.length !== undefined) return formats.length(choice.length);
	if (choice.part !== undefined) return partName(findings, choice.part);
	const text = own(findings.choices, choice.id);
	if (text === undefined) throw new RangeError(`the message catalogue has no choice "${choice.id}"`);
	return text;
}

const RANK = { missed: 0, extra: 1, found: 2, quiet: 3 } as const;

/** @returns what is said once an answered picture is graded: what was missed first. */
export function findingExplanation(messages: Messages, picture: Picture, grade: PictureGrade, formats: FindingFormats): FindingExplanation {
	const { findings } = messages;
	const { shown, key } = picture;
	const notes = shown.parts.map((part, i): FindingNoteWords => {
		const noteId = key.notes[part.id] ?? '';
		const note = own<Findings['notes'][keyof Findings['notes']]>(findings.notes, noteId);
		if (note === undefined) throw new RangeError(`the message catalogue has no note "${noteId}"`);
		const wanted = key.marks.includes(part.id);
		const state = grade.missed.includes(part.id) ? 'missed' : grade.extra.includes(part.id) ? 'extra' : wanted ? 'found' : 'quiet';
		const facts = own(key.facts, part.id);
		return {
			id: part.id,
			number: i + 1,
			name: partName(findings, part.id),
			see: seenOf(findings, shown, part, formats),
			state,
			stateText: { missed: findings.youMissed, extra: findings.notToMark, found: findings.yourMark, quiet: '' }[state],
			title: note.name,
			why: facts === undefined ? note.why : factsText(findings, facts, formats),
			act: facts === undefined ? findings.whatToDo({ act: note.act }) : '',
			source: facts === undefined ? findings.source({ what: sourcesText(findings, noteId) }) : ''
		};
	});
	const fine = grade.missed.length === 0 && grade.extra.length === 0;
	const choiceRight = grade.choice.given === grade.choice.right;
	const summary: string[] = [];
	if (grade.right) summary.push(findings.right);
	else {
		if (grade.missed.length > 0) summary.push(findings.missed({ count: grade.missed.length }));
		if (grade.extra.length > 0) summary.push(findings.extra({ count: grade.extra.length }));
		if (fine) summary.push(findings.marksRight);
	}
	if (!choiceRight) {
		const right = shown.choices.find((one) => one.id === grade.choice.right);
		if (right !== undefined) summary.push(findings.wrongChoice({ right: choiceText(findings, right, formats) }));
	}
	const closing = [...['now', 'framed'].flatMap((id) => {
		const facts = own(key.facts, id);
		if (facts === undefined) return [];
		const said = factsText(findings, facts, formats);
		return [id === 'framed' ? findings.framed({ seen: said }) : said];
	})];
	if (shown.drawing === 'moments') closing.push(`${findings.notes.moment.why} ${findings.notes.moment.act}`);
	closing.push(shown.kind === 'moment' ? findings.averagePull : findings.makerDecides);
	return { summary, notes: notes.sort((a, b) => RANK[a.state] - RANK[b.state] || a.number - b.number), closing };
}

function factsText(findings: Findings, facts: Picture['key']['facts'][string], formats: FindingFormats): string {
	return findings.momentFacts({
		stage: findings.stages[facts.stage],
		t: formats.time(facts.time),
		v: formats.speed(facts.speed),
		pull: formats.number(Math.round(facts.pull * 10) / 10)
	});
}

function sourcesText(findings: Findings, note: string): string {
	return sourcesOf(note)
		.map(({ clause, mark }) => (clause === undefined ? findings.marks[mark] : `${clause} (${findings.marks[mark]})`))
		.join('; ');
}
