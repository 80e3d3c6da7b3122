/** Saving, publishing and what else is done with a scenario: what is sent, what came of it, and what must not be lost. */
import { deserialize } from '$app/forms';
import type { InspectFinding } from '#lib/scenario/index.ts';
import type { Author } from './author.svelte.ts';
import { readDocument } from './model/document.ts';
import { toldFinding, toldRefusal, type Refusal } from './model/told.ts';
import { forget, keep } from './unsaved.ts';

/** What the server says of a deed. */
export interface DeedResult {
	readonly did: 'saved' | 'published' | 'retired' | 'restored' | 'discarded' | 'gone' | 'conflict' | 'refused';
	readonly revision?: number;
	/** The newest published version. */
	readonly published?: number | null;
	/** The document as it stands on the server, where it is another than the one that was sent. */
	readonly document?: string;
	readonly why?: 'not-found' | 'busy' | 'too-slow' | 'problems' | 'findings';
	readonly problems?: readonly Refusal[];
	readonly findings?: readonly InspectFinding[];
}

interface Stored {
	readonly id: string;
	readonly document: string;
	readonly revision: number;
	readonly published: number | null;
	readonly retired: boolean;
	/** Whether anything was changed since the newest version. */
	readonly draft: boolean;
}

export class Deeds {
	readonly #author: Author;
	readonly id: string;
	revision = $state(0);
	published = $state<number | null>(null);
	retired = $state(false);
	draft = $state(false);
	/** What is being sent. */
	busy = $state<'save' | 'publish' | 'other'>();
	/** What came of the last deed, in words. */
	told = $state('');
	/** Another text was saved meanwhile. */
	conflict = $state.raw<{ readonly revision: number; readonly document: string }>();
	/** The scenario is no more. */
	gone = $state(false);
	#savedText = $state('');

	constructor(author: Author, stored: Stored) {
		this.#author = author;
		this.id = stored.id;
		this.revision = stored.revision;
		this.published = stored.published;
		this.retired = stored.retired;
		this.draft = stored.draft;
		this.#savedText = author.text;
	}

	/** Whether the form holds what the server does not have. */
	get unsaved(): boolean {
		return this.#author.mayChange && this.#author.text !== this.#savedText;
	}

	/** Keeps what is not saved for the time after a crash or a reload of this window. */
	keepUnsaved(): void {
		if (this.unsaved) keep(this.id, { revision: this.revision, text: this.#author.text });
		else forget(this.id);
	}

	async save(): Promise<boolean> {
		const { text } = this.#author;
		const result = await this.#send('save', { text, revision: String(this.revision) }, 'save');
		if (result?.did !== 'saved') return false;
		this.#savedText = text;
		this.draft = true;
		this.told = '';
		return true;
	}

	/** Saves what is not saved, then publishes. */
	async publish(): Promise<void> {
		if (this.unsaved && !(await this.save())) return;
		const result = await this.#send('publish', { revision: String(this.revision) }, 'publish');
		if (result?.did !== 'published') return;
		this.draft = false;
		this.told = this.#author.page.publishedNow({ n: this.published ?? 1 });
	}

	async retire(): Promise<void> {
		if ((await this.#send('retire', {}, 'other'))?.did !== 'retired') return;
		this.retired = true;
		this.told = this.#author.page.retired;
	}

	async restore(): Promise<void> {
		if ((await this.#send('restore', {}, 'other'))?.did !== 'restored') return;
		this.retired = false;
		this.told = this.#author.page.restored;
	}

	async discard(): Promise<void> {
		const result = await this.#send('discard', { revision: String(this.revision) }, 'other');
		if (result?.did === 'gone') {
			forget(this.id);
			this.#savedText = this.#author.text;
			this.gone = true;
		}
		if (result?.did !== 'discarded') return;
		this.draft = false;
		this.#takeStored(result.document);
		this.told = this.#author.page.discarded;
	}

	/** Saves the own text over the one that was saved meanwhile. */
	async keepMine(): Promise<void> {
		if (this.conflict === undefined) return;
		this.revision = this.conflict.revision;
		this.conflict = undefined;
		await this.save();
	}

	/** Shows the text that was saved meanwhile. */
	takeTheirs(): void {
		const theirs = this.conflict;
		if (theirs === undefined) return;
		this.conflict = undefined;
		this.revision = theirs.revision;
		this.#takeStored(theirs.document);
	}

	#takeStored(text: string | undefined): void {
		const document = text === undefined ? undefined : readDocument(text);
		if (document === undefined) return;
		this.#author.show(document);
		this.#savedText = this.#author.text;
		forget(this.id);
	}

	async #send(action: string, fields: Readonly<Record<string, string>>, busy: NonNullable<Deeds['busy']>): Promise<DeedResult | undefined> {
		if (this.busy !== undefined) return undefined;
		this.busy = busy;
		this.told = '';
		try {
			const body = new FormData();
			for (const [name, value] of Object.entries(fields)) body.set(name, value);
			const response = await fetch(`?/${action}`, { method: 'POST', body, headers: { accept: 'application/json', 'x-sveltekit-action': 'true' } });
			const result = deserialize<{ readonly result: DeedResult }, { readonly result: DeedResult }>(await response.text());
			const came = result.type === 'success' || result.type === 'failure' ? result.data?.result : undefined;
			// A server that is not well, or has no room: it can be sent again.
			if (response.status >= 500) this.told = this.#author.page.notSent;
			else if (came === undefined) this.told = this.#author.page.refused['not-found'];
			else this.#hear(came);
			return came;
		} catch {
			this.told = this.#author.page.notSent;
			return undefined;
		} finally {
			this.busy = undefined;
		}
	}

	#hear(result: DeedResult): void {
		if (result.did === 'conflict') {
			this.conflict = { revision: result.revision ?? this.revision, document: result.document ?? '' };
			return;
		}
		if (result.revision !== undefined) this.revision = result.revision;
		if (result.published !== undefined) this.published = result.published;
		if (result.did !== 'refused') return;
		this.told = this.#author.page.refused[result.why ?? 'not-found'];
		const naming = this.#author;
		this.#author.serve([...(result.problems ?? []).map((one) => toldRefusal(naming, one)), ...(result.findings ?? []).map((one) => toldFinding(naming, one))]);
	}
}
