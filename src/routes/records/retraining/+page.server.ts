import { fail, redirect } from '@sveltejs/kit';
import { endsAtOnce } from '#lib/records/index.ts';
import { countOpen, countOrdered, database, listCrews, listOrdered, orderRetraining, recordSettings, recordsOf, todayIn, type Database, type Person } from '#lib/server/index.ts';
import { employerOf } from '../asking.ts';
import { peopleFor, readOrder, typedOrder, type ReadOrder, type Typed } from './order.server.ts';
import type { Actions, PageServerLoad } from './$types';

/** People on a page. @reason a screen or two */
const ON_PAGE = 50;

/** An order that is about to be given. */
interface Preview {
	readonly people: number;
	/** How many of them have an open order. */
	readonly withOpen: number;
	/** Whether what was valid ends today. */
	readonly atOnce: boolean;
}

/** What the form shows: what was typed, what is wrong with it, or what it would do. */
interface Told {
	readonly typed: Typed;
	readonly problems: Readonly<Record<string, string>>;
	readonly preview: Preview | null;
}

/** Who is due, the form, and what it would do if it was filled in. */
export const load: PageServerLoad = async ({ locals, url }) => {
	const employer = employerOf(locals.who);
	const db = await database();
	const now = new Date();
	const today = await todayIn(db, employer.organisation, now);
	const counts = await countOpen(db, employer.organisation, today);
	const pages = Math.max(1, Math.ceil(counts.open / ON_PAGE));
	const asked = Number(url.searchParams.get('page') ?? 1);
	const page = Number.isInteger(asked) && asked >= 1 ? Math.min(asked, pages) : 1;
	const asksToLook = url.searchParams.has('whom');
	const typed = typedOrder((name) => url.searchParams.get(name));
	const changes: Told = { typed, problems: {}, preview: null };
	const usual: Told = { typed: { ...typed, days: String((await recordSettings(db, employer.organisation)).soonDays) }, problems: {}, preview: null };
	return {
		...counts,
		page,
		pages,
		rows: await rowsOf(db, employer, page, today),
		crews: (await listCrews(db, employer)).filter((one) => one.archivedAt === null && one.learners > 0).map(({ id, name }) => ({ id, name })),
		told: url.searchParams.has('change') ? changes : asksToLook ? await look(db, employer, typed, today) : usual,
		ordered: Number(url.searchParams.get('ordered') ?? NaN)
	};
};

async function rowsOf(db: Database, employer: Person, page: number, today: string) {
	const rows = await listOrdered(db, employer.organisation, { from: (page - 1) * ON_PAGE, count: ON_PAGE });
	const records = await recordsOf(db, rows.map(({ id }) => id));
	return rows.map((row) => {
		const record = records.get(row.id);
		const open = record?.orders.filter((one) => !one.withdrawn && !one.done) ?? [];
		const run = record?.orders.filter((one) => !one.withdrawn).length;
		return {
			...row,
			late: row.due < today,
			reasons: [...new Set(open.map(({ entry }) => entry.reason))],
			theory: record?.trainings.some((one) => one.run === run && one.revoked === undefined) === true
		};
	});
}

async function look(db: Database, employer: Person, typed: Typed, today: string): Promise<Told> {
	const read = readOrder(typed, today);
	if (read.kind === 'refused') return { typed, problems: read.problems, preview: null };
	const found = await peopleFor(db, employer, read.order.filter);
	if (found.kind === 'refused') return { typed, problems: found.problems, preview: null };
	return { typed, problems: {}, preview: await previewOf(db, read.order, found.people) };
}

async function previewOf(db: Database, { reason }: ReadOrder, people: readonly string[]): Promise<Preview> {
	return { people: people.length, withOpen: await countOrdered(db, people), atOnce: endsAtOnce(reason) };
}

export const actions: Actions = {
	/**
	 * Orders it for those who were counted. If they have become more or fewer, or others of them have an open order, as
	 * after a double press, they are shown again first.
	 */
	async order({ request, locals }) {
		const employer = employerOf(locals.who);
		const db = await database();
		const now = new Date();
		const form = await request.formData();
		const typed = typedOrder((name) => form.get(name));
		const today = await todayIn(db, employer.organisation, now);
		const refused = (told: Omit<Told, 'typed'>) => fail(400, { typed, ...told });
		const read = readOrder(typed, today);
		if (read.kind === 'refused') return refused({ problems: read.problems, preview: null });
		const found = await peopleFor(db, employer, read.order.filter);
		if (found.kind === 'refused') return refused({ problems: found.problems, preview: null });
		const { people } = found;
		const preview = await previewOf(db, read.order, people);
		const asShown = String(preview.people) === form.get('people') && String(preview.withOpen) === form.get('withOpen');
		if (people.length === 0 || !asShown) return refused({ problems: { people: 'changed' }, preview });
		const ordering = await orderRetraining(db, employer, { people }, { ...read.order, withOpen: preview.withOpen }, now);
		switch (ordering.kind) {
			case 'ordered':
				redirect(303, `/records/retraining?ordered=${String(ordering.people)}`);
				break;
			case 'due-past':
			case 'due-far':
				return refused({ problems: { due: ordering.kind }, preview: null });
			case 'changed':
				return refused({ problems: { people: 'changed' }, preview: await previewOf(db, read.order, people) });
			case 'not-found':
				return refused({ problems: { people: 'changed' }, preview: await previewOf(db, read.order, []) });
		}
	}
};
