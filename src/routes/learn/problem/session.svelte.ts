/** One site problem on one device: the flow's machine, and the effects that it asks for. */
import { createActor } from 'xstate';
import {
	answersOf,
	isQuery,
	lastAttempt,
	readSnapshot,
	resume,
	siteProblemMachine,
	startContext,
	writeSnapshot,
	type Drawing,
	type FlowContext,
	type FlowEvent,
	type FlowInput,
	type FlowState,
	type Grades,
	type Outbox,
	type Remembered,
	type SendOutcome
} from '#lib/flow/index.ts';
import type { StepGrade, WalkStep } from '#lib/grading/index.ts';
import type { Language } from '#lib/quantity/index.ts';
import type { Ask, NumberAsk, Problem } from '#lib/scenario/index.ts';
import { deviceOutbox, newId, remember, remembered, storedGrades } from './device.ts';
import { loadGrading, untilLoaded, type Grading } from './later.ts';

function drawingOf(problem: Problem): Drawing {
	return {
		scenario: problem.scenario.id,
		version: problem.scenario.version,
		drawVersion: problem.drawVersion,
		seed: problem.seed,
		acceptedTry: problem.acceptedTry
	};
}

/** What a problem with these asks is remembered under. */
function keyOf(problem: Problem, asks: readonly Ask[]): string {
	const { id } = problem.scenario;
	const key = `${id}.${problem.seed}`;
	return asks.length === problem.scenario.asks.length ? key : `${key}.${asks.map((ask) => ask.id).join('.')}`;
}

/** Whether marks belong to what was kept: they are not kept themselves. */
function isGraded(kept: Remembered): kept is Extract<Remembered, { kind: 'whole' }> {
	return kept.kind === 'whole' && ['explained', 'solved', 'stepping', 'walked'].includes(kept.snapshot.state);
}

/** What takes answers in before the outbox of free practice does. */
export interface Host {
	/**
	 * Answers were marked.
	 * @param body what the attempts of the server take, without the id
	 * @param told how the problem's flow is told what becomes of them
	 * @returns true if the host sends them itself
	 */
	readonly hand: (id: string, body: Readonly<Record<string, unknown>>, grades: Grades, told: (event: FlowEvent) => void) => boolean;
	/** What the problem is remembered under, where it must not meet the same one of somebody else; without spaces. */
	readonly name?: string;
	/** Nothing is remembered on this device, and nothing sent from it: a page that only shows what it is like. */
	readonly forgets?: boolean;
}

export class ProblemSession {
	readonly problem: Problem;
	/** What is asked, in order: all asks of the scenario, or some of them. */
	readonly asks: readonly Ask[];
	readonly #language: Language;
	readonly #key: string;
	readonly #input: FlowInput;
	readonly #host: Host | undefined;
	#actor: ReturnType<typeof this.started>;
	#outbox: Outbox | undefined;
	/** What marks answers, once it is there. */
	#grading = $state.raw<typeof Grading>();
	/** What was kept and waits for marks to be made again, while nobody has done anything else. */
	#kept: Remembered | undefined;
	#state = $state.raw<FlowState>('reading');
	#context = $state.raw<FlowContext>() as FlowContext;
	#waiting = $state(0);

	/**
	 * @param asks what is asked of the problem, in the scenario's order; all of it when left out. Fewer asks are
	 * remembered apart from all of them.
	 * @param host a lesson, for which answers count
	 */
	constructor(problem: Problem, language: Language, asks: readonly Ask[] = problem.scenario.asks, host?: Host) {
		this.problem = problem;
		this.asks = asks;
		this.#language = language;
		this.#host = host;
		this.#key = host?.name ?? keyOf(problem, asks);
		this.#input = {
			drawing: drawingOf(problem),
			asks: asks.map((ask) => ask.id),
			decisions: asks.filter((ask) => ask.kind === 'decision').map((ask) => ask.id)
		};
		this.#actor = this.started();
		this.#context = this.#actor.getSnapshot().context;
	}

	/** A running machine, at its start or where it was left. */
	private started(at?: { readonly state: FlowState; readonly context: FlowContext }) {
		const snapshot = at === undefined ? undefined : siteProblemMachine.resolveState({ value: at.state, context: at.context });
		const actor = createActor(siteProblemMachine, { input: this.#input, ...(snapshot === undefined ? {} : { snapshot }) });
		actor.start();
		return actor;
	}

	get state(): FlowState {
		return this.#state;
	}

	get context(): FlowContext {
		return this.#context;
	}

	/** How many answers wait on this device, those of other problems too. */
	get waiting(): number {
		return this.#waiting;
	}

	/** Whether what is done here leaves no trace. */
	get forgets(): boolean {
		return this.#host?.forgets === true;
	}

	get language(): Language {
		return this.#language;
	}

	/** In the browser: goes on where this problem was left, and sends what waits. @returns what ends it. */
	open(): () => void {
		const kept = readSnapshot(this.forgets ? null : remembered(this.#key), this.#input.drawing, this.#input.asks);
		this.#outbox = this.forgets ? undefined : deviceOutbox();
		this.#waiting = this.#outbox?.waiting() ?? 0;
		if (this.#grading === undefined && isGraded(kept)) {
			this.#kept = kept;
			const { entries, sent } = kept.snapshot;
			this.#goOn({ state: 'reading', context: startContext({ ...this.#input, entries, sent }) });
		} else {
			this.#resume(kept);
		}
		const giveUp = untilLoaded(loadGrading, (grading) => this.#ready(grading));
		const flush = (): void => void this.#flush();
		addEventListener('online', flush);
		flush();
		return () => {
			giveUp();
			removeEventListener('online', flush);
			this.#actor.stop();
		};
	}

	/** Goes on with what was kept, marks and all. */
	#resume(kept: Remembered): void {
		const at = resume(this.#input, kept, {
			grade: (context) => this.#grades(context),
			walk: (ask, texts) => this.#walked(ask, texts)
		});
		this.#goOn(at);
		void this.#askServer();
	}

	#goOn(at: { readonly state: FlowState; readonly context: FlowContext }): void {
		this.#actor.stop();
		this.#actor = this.started(at);
		this.#take();
	}

	/** What marks answers has come: what waited for it is done. */
	#ready(grading: typeof Grading): void {
		this.#grading = grading;
		const kept = this.#kept;
		this.#kept = undefined;
		if (kept !== undefined) this.#resume(kept);
		this.#mark();
	}

	/** Marks the answers that were handed in, if they are there and what marks them is too. */
	#mark(): void {
		const { value, context } = this.#actor.getSnapshot();
		if (value !== 'grading' || this.#grading === undefined) return;
		const grades = this.#grades(context);
		const attempt = newId();
		this.#actor.send({ type: 'GRADED', grades, attempt });
		if (!Object.values(grades).some(isQuery)) this.#hand(attempt, grades, this.#grading);
		this.#take();
	}

	/** Hands an event to the machine, and does what its new state asks for. */
	send(event: FlowEvent): void {
		// Who goes on by hand does not go back to what was kept.
		if (event.type !== 'SENT' && event.type !== 'SERVER_GRADED') this.#kept = undefined;
		this.#actor.send(event);
		this.#take();
		this.#mark();
	}

	/** Grades the step at hand of the step-through. */
	checkStep(): void {
		const { walk } = this.#context;
		const grade = walk === undefined ? undefined : this.#walked(walk.ask, walk.steps.map((step) => step.text))[walk.at];
		if (grade !== undefined) this.send({ type: 'STEP_GRADED', grade });
	}

	/** The steps of a number ask, to be worked one by one. */
	stepsOf(ask: string): readonly WalkStep[] {
		const found = this.numberAsk(ask);
		return found === undefined ? [] : (this.#grading?.walkOf(this.problem, found) ?? []);
	}

	/** Those asks that take a number. */
	get numberAsks(): readonly NumberAsk[] {
		return this.asks.filter((ask): ask is NumberAsk => ask.kind === 'number');
	}

	numberAsk(id: string): NumberAsk | undefined {
		return this.numberAsks.find((ask) => ask.id === id);
	}

	#take(): void {
		const snapshot = this.#actor.getSnapshot();
		this.#state = snapshot.value;
		this.#context = snapshot.context;
		if (this.#outbox === undefined || this.#kept !== undefined) return;
		remember(this.#key, writeSnapshot(this.#state, this.#context));
	}

	#grades(context: FlowContext): Grades {
		return Object.fromEntries(this.#grading?.gradeProblem(this.problem, answersOf(context), { language: this.#language }) ?? []);
	}

	/** Grades the steps of a step-through that hold a text, each with the own values of the wrong ones before. */
	#walked(askId: string, texts: readonly string[]): readonly (StepGrade | undefined)[] {
		const ask = this.numberAsk(askId);
		if (ask === undefined) return [];
		return this.#grading?.gradeWalk(this.problem, ask, texts, this.#language) ?? [];
	}

	/** Puts the answers that were just graded into the box, and sends the box. */
	#hand(id: string, grades: Grades, grading: typeof Grading): void {
		const context = this.#actor.getSnapshot().context;
		const { scenario, version, drawVersion, seed, acceptedTry } = context.drawing;
		const body = {
			scenario,
			version,
			drawVersion,
			slipSetVersion: grading.SLIP_SET_VERSION,
			seed,
			acceptedTry,
			...(this.asks.length === this.problem.scenario.asks.length ? {} : { asks: this.asks.map((ask) => ask.id) }),
			language: this.#language,
			answers: Object.fromEntries(answersOf(context))
		};
		if (this.#host?.hand(id, body, grades, (event) => this.send(event)) === true) return;
		this.#outbox?.put({ id, body });
		void this.#flush();
	}

	async #flush(): Promise<void> {
		const told = (id: string, outcome: SendOutcome): void => {
			const state = outcome.kind === 'stored' ? 'stored' : outcome.kind === 'later' ? 'waiting' : 'refused';
			if (this.#context.sent.some((one) => one.id === id)) this.send({ type: 'SENT', id, state });
			if (outcome.kind === 'stored') this.#heed(id, outcome.grades);
		};
		await this.#outbox?.flush(told);
		this.#waiting = this.#outbox?.waiting() ?? 0;
	}

	/** The server's word counts: its grades take the place of the device's. */
	#heed(id: string, grades: Grades): void {
		if (id === lastAttempt(this.#context)) this.send({ type: 'SERVER_GRADED', id, grades });
	}

	/** After a reload: the server's grades of an answer that it has stored before. */
	async #askServer(): Promise<void> {
		const id = lastAttempt(this.#context);
		if (id === undefined || this.#context.grades === undefined) return;
		if (this.#context.sent.at(-1)?.state !== 'stored') return;
		const grades = await storedGrades(id);
		if (grades !== undefined) this.#heed(id, grades);
	}
}
