/** What the board shows of one problem, and of the plan that somebody entered in its place. Nothing of it leaves the page. */
import { explain, type Explanation } from '#lib/grading/index.ts';
import type { Language } from '#lib/quantity/index.ts';
import type { Ask, Problem } from '#lib/scenario/index.ts';
import type { StepRow, TapeView } from '#lib/scene/index.ts';
import type { Messages, StaffMessages } from '#lib/text/index.ts';
import { tellNumber, type Told } from '../../learn/problem/model/diagnosis.ts';
import { learnerLevel, SITE_CASE } from '../../learn/problem/model/playback.ts';
import { siteModel } from '../../learn/problem/model/site.ts';
import { stepRows } from '../../learn/problem/model/steps.ts';
import { verdictOf } from '../../learn/problem/model/verdict.ts';
import { writerFor, type Writer } from '../../learn/problem/model/writing.ts';
import { withoutName } from './model/anonymous.ts';
import type { Called } from './model/called.ts';
import type { EntryProblem } from './model/enter-plan.ts';
import { boardFall, type BoardFall } from './model/fall.ts';
import { keepPlan, keptPlan } from './model/kept-plan.ts';
import { NOTHING_ENTERED, type PlanEntry } from './model/plan-fields.ts';
import { canBeMarked, resultOf } from './model/result.ts';
import { absenceText, boardStory, refusalText, type BoardSpeech } from './model/speech.ts';
import { beside, placeOf, stopsOf, type Stop } from './model/stops.ts';
import { boardTape, NO_TAPE } from './model/tape.ts';

export class BoardSession {
	/** As drawn, without the name. */
	readonly site: Problem;
	readonly writer: Writer;
	readonly #language: Language;
	readonly #m: Messages & StaffMessages;
	readonly #key: string;
	#own = $state.raw<Problem>();
	#entry = $state.raw<PlanEntry>(NOTHING_ENTERED);
	#problems = $state.raw<Readonly<Record<string, EntryProblem>>>({});
	#ask = $state('');
	#stop = $state.raw<Stop>({ kind: 'problem' });
	#called = $state.raw<readonly Called[]>([]);
	/** Which explanation the class says was theirs, by the id of what was called. */
	#chosen = $state.raw<Readonly<Record<string, number>>>({});
	/** Whose number the fall is played with. */
	#player = $state('');
	/** Of the falls that are shown, the one that is looked at. */
	shownCase = $state(SITE_CASE);

	readonly speech: BoardSpeech = $derived.by(() => ({ problem: this.#own ?? this.site, language: this.#language, m: this.#m }));
	readonly story = $derived.by(() => boardStory(this.speech, this.site));
	readonly model = $derived.by(() => siteModel(this.speech, this.writer));
	/** What is asked of it. */
	readonly asks: readonly Ask[];
	readonly ask: Ask | undefined = $derived.by(() => this.asks.find((one) => one.id === this.#ask) ?? this.asks[0]);
	/** Why the plan is refused, by name. */
	readonly refusal = $derived.by(() => refusalText(this.speech));
	readonly result = $derived.by(() => (this.ask?.kind === 'number' ? resultOf(this.speech.problem, this.ask) : undefined));
	/** Whether answers can be right or wrong. */
	readonly marked = $derived.by(() => this.ask?.kind === 'decision' || (this.ask !== undefined && this.result !== undefined && canBeMarked(this.ask, this.result)));
	/** Why there is no value; empty where there is one. */
	readonly absent = $derived.by(() => (this.result?.kind === 'absent' ? absenceText(this.speech, this.result.absence) : ''));
	readonly #working: Explanation | undefined = $derived.by(() =>
		this.ask?.kind === 'number' && this.result?.kind === 'known' ? explain(this.speech.problem, this.ask, []) : undefined
	);
	readonly rows: readonly StepRow[] = $derived.by(() =>
		this.ask?.kind === 'number' && this.#working !== undefined ? stepRows(this.speech, this.writer, this.ask, undefined, this.#working) : []
	);
	readonly verdict = $derived.by(() => (this.refusal === undefined ? verdictOf(this.speech, this.writer) : undefined));
	readonly steps = $derived.by(() => (this.ask?.kind === 'decision' ? (this.verdict?.rows.length ?? 0) : this.rows.length));
	/** Numbers that are explained one by one. */
	readonly explained = $derived.by(() => (this.ask?.kind === 'number' ? this.#called.filter((one) => one.grade.kind === 'number') : []));
	readonly stops = $derived.by(() => stopsOf({ steps: this.steps, called: this.explained.length, refused: this.refusal !== undefined }));
	readonly place = $derived.by(() => placeOf(this.stops, this.#stop));
	readonly stop: Stop = $derived.by(() => this.stops[this.place] ?? { kind: 'problem' });
	/** What was called and is explained now. */
	readonly now = $derived.by(() => (this.stop.kind === 'called' ? this.explained[this.stop.at] : undefined));
	readonly told: Told | undefined = $derived.by(() => {
		const { now, ask } = this;
		return ask?.kind === 'number' && now?.grade.kind === 'number' ? tellNumber(this.speech, this.writer, ask, now.grade, this.#chosen[now.id]) : undefined;
	});
	readonly #explanation: Explanation | undefined = $derived.by(() =>
		this.ask?.kind === 'number' && this.#working !== undefined ? explain(this.speech.problem, this.ask, this.told?.slips ?? []) : undefined
	);
	readonly calledRows: readonly StepRow[] = $derived.by(() => {
		const { ask, now } = this;
		return ask?.kind === 'number' && now?.grade.kind === 'number' && this.#explanation !== undefined
			? stepRows(this.speech, this.writer, ask, now.grade.answer, this.#explanation)
			: [];
	});
	/** Called numbers that mean a level, so that the fall can be shown against them. */
	readonly players: readonly Called[] = $derived.by(() => {
		const { ask, speech } = this;
		if (ask?.kind !== 'number') return [];
		return this.explained.filter(({ grade }) => grade.kind === 'number' && grade.answer !== undefined && learnerLevel(speech.problem, ask, grade.answer) !== undefined);
	});
	readonly tape: TapeView = $derived.by(() => {
		const { ask, now, stop } = this;
		if (ask?.kind !== 'number' || this.#explanation === undefined) return NO_TAPE;
		return boardTape(this.speech, this.writer, { ask, stop, explanation: this.#explanation, grade: now?.grade });
	});
	readonly player = $derived.by(() => (this.players.some((one) => one.id === this.#player) ? this.#player : ''));
	/** The fall, with the level that the chosen number means. */
	readonly fall: BoardFall = $derived.by(() => {
		const { ask, player } = this;
		const grade = this.players.find((one) => one.id === player)?.grade;
		const level = ask?.kind === 'number' && grade?.kind === 'number' && grade.answer !== undefined ? learnerLevel(this.speech.problem, ask, grade.answer) : undefined;
		return boardFall(this.speech, this.writer, this.model, level);
	});

	/** @param asks ids of what is asked. */
	constructor(problem: Problem, asks: readonly string[], language: Language, m: Messages & StaffMessages) {
		this.site = withoutName(problem, m.board.worker);
		this.asks = problem.scenario.asks.filter((one) => asks.includes(one.id));
		this.writer = writerFor(problem.scenario, language);
		this.#language = language;
		this.#m = m;
		this.#key = `${problem.scenario.id}.${problem.scenario.version}.${problem.seed}`;
	}

	get called(): readonly Called[] {
		return this.#called;
	}

	get entry(): PlanEntry {
		return this.#entry;
	}

	/** What of the entry is not taken, by the id of the given or the fact. */
	get problems(): Readonly<Record<string, EntryProblem>> {
		return this.#problems;
	}

	/** A plan was entered in place of the drawn one. */
	get entered(): boolean {
		return this.#own !== undefined;
	}

	go(way: 1 | -1): void {
		this.to(beside(this.stops, this.stop, way));
	}

	to(stop: Stop): void {
		const { now } = this;
		if (stop.kind === 'fall') this.play((now ?? this.players.find((one) => one.grade.kind === 'number' && one.grade.mark.kind === 'wrong') ?? this.players[0])?.id ?? '');
		this.#stop = stop;
	}

	asked(id: string): void {
		this.#ask = id;
		this.#clear();
		this.#stop = { kind: 'class' };
	}

	call(list: readonly Called[]): void {
		this.#called = list;
	}

	choose(candidate: number): void {
		if (this.now !== undefined) this.#chosen = { ...this.#chosen, [this.now.id]: candidate };
	}

	/** Whose fall is shown; with an empty id the site's alone. */
	play(id: string): void {
		this.shownCase = SITE_CASE;
		this.#player = id;
	}

	#clear(): void {
		this.#called = [];
		this.#chosen = {};
		this.#player = '';
	}

	/** Takes an entry over: the drawing follows if the plan is whole, else it stays and the fields say why. */
	async enter(entry: PlanEntry): Promise<void> {
		this.#entry = entry;
		keepPlan(this.#key, entry);
		const { enterPlan } = await import('./model/enter-plan.ts');
		// While it was loaded another entry may have come.
		if (this.#entry !== entry) return;
		const entered = enterPlan(this.site, entry, this.#language);
		this.#problems = entered.kind === 'refused' ? entered.problems : {};
		if (entered.kind === 'refused') return;
		this.#own = entered.problem;
		this.#clear();
	}

	/** Back to the plan as it was drawn. */
	drop(): void {
		this.#entry = NOTHING_ENTERED;
		this.#problems = {};
		this.#own = undefined;
		this.#clear();
		this.#stop = { kind: 'problem' };
		keepPlan(this.#key, undefined);
	}

	/** After a reload: what was entered into this site in this tab. */
	async restore(): Promise<void> {
		const kept = keptPlan(this.#key);
		if (kept !== undefined) await this.enter(kept);
	}
}
