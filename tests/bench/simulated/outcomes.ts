/** Rows of what simulated people's answers came to, written straight into a SQLite file: a bench needs a million of them. */
import { randomUUID } from 'node:crypto';
import { DatabaseSync, type StatementSync } from 'node:sqlite';
import { skillOf } from '#lib/flow/index.ts';
import type { Ask, Scenario } from '#lib/scenario/index.ts';
import { weekOf } from '#lib/server/attempts/outcomes.ts';
import type { Asker } from '#lib/server/db/crews.ts';
import { SLIPS } from '#lib/slips/index.ts';
import { dice, type Dice } from './learner.ts';
import { shippedScenarios } from './shipped.ts';

/** @reason asks of an answered problem, rounded up: seven of ten answers are of two asks */
const OF_TWO = 7;
/** @reason three of ten answers go wrong, one of three of those on the unsafe side, and most look like one slip */
const SHARES = { wrong: 3, critical: 1, slip: 8 };
/** Over how many days they are spread. @reason half a year */
const DAYS = 180;
const DAY = 24 * 60 * 60 * 1000;
const LAST = Date.parse('2026-11-30T16:00:00.000Z');
/** Answers of one person outside the crew. */
const OTHERS_EACH = 500;

/** One ask of an answered problem. */
interface Asked {
	readonly scenario: Scenario;
	readonly ask: Ask;
}

/** An organisation in a database of its own: a crew with its trainer, and people outside it. */
export class PictureSeeds {
	readonly crew = randomUUID();
	readonly trainer: Asker;
	readonly #db: DatabaseSync;
	readonly #roll: Dice;
	readonly #organisation = randomUUID();
	readonly #insert: StatementSync;
	readonly #asked: readonly Asked[];
	#count = 0;

	/** @param file a database whose tables are there. @param seed of all that is drawn */
	constructor(file: string, seed: number) {
		this.#db = new DatabaseSync(file, { enableForeignKeyConstraints: true });
		// What is written here is thrown away: it need not be on the disk.
		this.#db.exec('PRAGMA synchronous = OFF');
		this.#roll = dice(seed);
		this.#asked = shippedScenarios().flatMap((scenario) => scenario.asks.map((ask) => ({ scenario, ask })));
		this.#db
			.prepare('insert into organisation (id, name, rules, units, language, zone, pass_rule, created_at) values (?, ?, ?, ?, ?, ?, ?, ?)')
			.run(this.#organisation, 'Harrow Bridges', 'us-construction', 'metric', 'en', 'America/Bogota', 'staged', '2026-01-05T08:00:00.000Z');
		this.#insert = this.#db.prepare(
			'insert into outcome (answer_id, ask, answerer_id, way, assignment_id, scenario_id, cell, skill, wrong, critical, slip, week, at) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)'
		);
		const trainer = this.#person('trainer');
		this.trainer = { id: trainer.id, organisation: this.#organisation, role: 'trainer' };
		this.#db.prepare('insert into crew (id, organisation_id, name, join_code, archived_at, created_at) values (?, ?, ?, ?, null, ?)').run(this.crew, this.#organisation, 'Bridges North', 'BRIDGESN', '2026-01-05T08:00:00.000Z');
		this.#db.prepare('insert into crew_trainer (crew_id, person_id, since) values (?, ?, ?)').run(this.crew, trainer.id, '2026-01-05T08:00:00.000Z');
	}

	/** Adds people to the crew, with so many answers each, one person's among the others' as they come in. */
	crewOf(people: number, answers: number): void {
		const join = this.#db.prepare('insert into crew_learner (crew_id, person_id, since) values (?, ?, ?)');
		this.#together(() => {
			const all = Array.from({ length: people }, () => this.#person('learner'));
			for (const { id } of all) join.run(this.crew, id, '2026-01-05T08:00:00.000Z');
			for (let i = 0; i < answers; i += 1) for (const { answerer } of all) this.#answer(answerer, i / answers);
		});
	}

	/** Adds so many answers of people outside the crew. */
	others(answers: number): void {
		this.#together(() => {
			const people = Array.from({ length: Math.ceil(answers / OTHERS_EACH) }, () => this.#person('learner'));
			for (let i = 0; i < answers; i += 1) {
				const person = people[i % people.length];
				if (person !== undefined) this.#answer(person.answerer, i / answers);
			}
		});
	}

	close(): void {
		this.#db.close();
	}

	#together(write: () => void): void {
		this.#db.exec('begin');
		write();
		this.#db.exec('commit');
	}

	#person(role: 'learner' | 'trainer'): { readonly id: string; readonly answerer: string } {
		const [id, answerer] = [randomUUID(), randomUUID()];
		this.#count += 1;
		this.#db.prepare('insert into guest (id, token_hash, created_at) values (?, ?, ?)').run(answerer, answerer, '2026-01-05T08:00:00.000Z');
		this.#db
			.prepare('insert into person (id, organisation_id, answerer_id, role, name, personal_number, email, secret, language, closed_at, created_at) values (?, ?, ?, ?, ?, ?, null, null, null, null, ?)')
			.run(id, this.#organisation, answerer, role, `Person ${String(this.#count)}`, `N${String(this.#count)}`, '2026-01-05T08:00:00.000Z');
		return { id, answerer };
	}

	/** One answered problem. @param when from 0, the first day, to 1, the last */
	#answer(answerer: string, when: number): void {
		const id = randomUUID();
		const first = this.#roll(this.#asked.length);
		const asks = this.#roll(10) < OF_TWO ? 2 : 1;
		const at = new Date(LAST - Math.round((1 - when) * DAYS * DAY) + this.#roll(DAY));
		for (const one of this.#asked.slice(first, first + asks)) this.#outcome(id, answerer, one, at);
	}

	#outcome(id: string, answerer: string, { scenario, ask }: Asked, at: Date): void {
		const wrong = this.#roll(10) < SHARES.wrong;
		const critical = wrong && this.#roll(3) < SHARES.critical;
		const slip = wrong && ask.kind === 'number' && this.#roll(10) < SHARES.slip ? (SLIPS[this.#roll(SLIPS.length)]?.id ?? '') : '';
		this.#insert.run(id, `${scenario.id}.${ask.id}`, answerer, 'practice', null, scenario.id, ask.cell, skillOf(ask), Number(wrong), Number(critical), slip, weekOf(at), at.toISOString());
	}
}
