import { error, fail, redirect } from '@sveltejs/kit';
import { database, decodeList, enterEveryone, isUnchanged, LONGEST_LIST, lookAtEveryone, type EveryoneLine, type LookingAtAll, type Missing } from '#lib/server/index.ts';
import { employerOf } from '../../asking.ts';
import type { Actions, PageServerLoad } from './$types';

/** A count in the address: what was done, told once more on the page that follows. */
function counted(url: URL, name: string): number {
	const value = Number(url.searchParams.get(name) ?? '0');
	return Number.isSafeInteger(value) && value >= 0 ? value : 0;
}

export const load: PageServerLoad = ({ locals, url }) => {
	employerOf(locals.who);
	return { done: url.searchParams.get('did') === 'entered' ? { added: counted(url, 'added'), changed: counted(url, 'changed'), gone: counted(url, 'left') } : null };
};

/** What was sent: the file, if one was chosen, else the pasted text. */
async function textOf(form: FormData): Promise<string | null> {
	const file = form.get('file');
	if (file instanceof File && file.size > 0) return file.size > LONGEST_LIST ? null : decodeList(new Uint8Array(await file.arrayBuffer()));
	const pasted = form.get('list');
	return typeof pasted === 'string' ? pasted : '';
}

/** What the page shows of a list. */
interface Shown {
	readonly refused: string | null;
	readonly openIn: number | null;
	readonly text: string;
	readonly looked: { readonly lines: readonly EveryoneLine[]; readonly missing: Missing; readonly shown: string; readonly counts: Readonly<Record<'added' | 'changed' | 'unchanged' | 'wrong', number>> } | null;
	/** Whether the box is ticked. */
	readonly othersLeft: boolean;
}

const NONE: Shown = { refused: null, openIn: null, text: '', looked: null, othersLeft: false };

function shownOf(text: string, { lines, missing, shown }: Extract<LookingAtAll, { kind: 'looked' }>, more: Partial<Shown> = {}): Shown {
	const changes = lines.flatMap((line) => (line.wrong === undefined ? [line.change] : []));
	const added = changes.filter(({ person }) => person === null).length;
	const unchanged = changes.filter(isUnchanged).length;
	return { ...NONE, text, looked: { lines, missing, shown, counts: { added, changed: changes.length - added - unchanged, unchanged, wrong: lines.length - changes.length } }, ...more };
}

function refused(text: string, refusal: Extract<LookingAtAll, { kind: 'refused' }>) {
	// What is no text is no use in the field either.
	return fail(400, { ...NONE, refused: refusal.why, openIn: refusal.why === 'open-quote' ? refusal.line : null, text: refusal.why === 'not-text' ? '' : text });
}

export const actions: Actions = {
	/** Shows what every line would do; nothing is changed. */
	async look({ request, locals }) {
		const employer = employerOf(locals.who);
		const text = await textOf(await request.formData());
		if (text === null) return fail(400, { ...NONE, refused: 'too-long' });
		const looking = await lookAtEveryone(await database(), employer, text);
		return looking.kind === 'refused' ? refused(text, looking) : shownOf(text, looking);
	},

	/** Enters what was shown, if it is still so. */
	async enter({ request, locals }) {
		const employer = employerOf(locals.who);
		const form = await request.formData();
		const text = await textOf(form);
		if (text === null) return fail(400, { ...NONE, refused: 'too-long' });
		const shown = form.get('shown');
		const othersLeft = form.get('left') === 'yes';
		const entering = await enterEveryone(await database(), employer, { text, shown: typeof shown === 'string' ? shown : '', othersLeft }, new Date());
		switch (entering.kind) {
			case 'refused':
				return refused(text, entering);
			case 'not-found':
				return error(404, 'Not Found');
			case 'changed':
			case 'cannot-leave':
				return fail(400, shownOf(text, entering.looked, { refused: entering.kind, othersLeft }));
			case 'entered':
				return redirect(303, `/records/people/list?${new URLSearchParams({ did: 'entered', added: String(entering.added), changed: String(entering.changed), left: String(entering.left) })}`);
		}
	}
};
