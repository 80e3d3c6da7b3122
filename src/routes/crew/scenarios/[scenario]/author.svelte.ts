/** The document that is being written, and what the form, the panel and the deeds share about it. */
import { createContext, tick } from 'svelte';
import type { Language } from '#lib/quantity/index.ts';
import type { Messages, StaffMessages } from '#lib/text/index.ts';
import { Inspector } from './inspector.svelte.ts';
import { at, documentText, isBelow, listAt, pathKey, put, textAt, type Json, type Path } from './model/document.ts';
import { toldFindings, type ToldFinding } from './model/told.ts';
import type { Choices } from './model/choices.ts';

export type AuthorMessages = Messages & StaffMessages;

interface Setting {
	readonly document: Json;
	readonly mayChange: boolean;
	readonly m: AuthorMessages;
	readonly language: Language;
	readonly choices: Choices;
	/** The id that it has here, and the version that it will be published as: draws hang on both. */
	readonly id: string;
	readonly version: () => number;
}

/** Where a cursor was last in a text that takes slots. */
interface Cursor {
	readonly path: Path;
	readonly from: number;
	readonly to: number;
}

export class Author {
	readonly m: AuthorMessages;
	readonly language: Language;
	readonly choices: Choices;
	readonly mayChange: boolean;
	readonly inspector = new Inspector();
	/** The language whose story is being written. */
	storyLanguage = $state<Language>('en');
	cursor: Cursor | undefined;
	#document = $state.raw<Json>({});
	/** Findings of the server, where it found other ones when publishing. */
	#served = $state.raw<readonly ToldFinding[]>([]);
	readonly #findings = $derived.by(() => this.#tell());
	readonly #byPath = $derived(Map.groupBy(this.#findings, (one) => pathKey(one.path)));

	readonly #id: string;
	readonly #version: () => number;

	constructor({ document, mayChange, m, language, choices, id, version }: Setting) {
		this.#id = id;
		this.#version = version;
		this.#document = document;
		this.mayChange = mayChange;
		this.m = m;
		this.language = language;
		this.storyLanguage = language;
		this.choices = choices;
	}

	get page(): AuthorMessages['authoring']['page'] {
		return this.m.authoring.page;
	}

	get document(): Json {
		return this.#document;
	}

	/** The document as it is saved. */
	get text(): string {
		return documentText(this.#document);
	}

	/** Takes a whole document: the one change that all others go through. */
	take(document: Json): void {
		if (!this.mayChange || document === this.#document) return;
		this.show(document);
	}

	/** Shows another document, whoever may change it. */
	show(document: Json): void {
		this.#document = document;
		this.#served = [];
		this.inspect();
	}

	/** Inspects the document as it would be published: the same seeds then draw the same problems. */
	inspect(): void {
		this.inspector.take(put(put(this.#document, ['id'], this.#id), ['version'], this.#version()));
	}

	/** Changes one thing; undefined takes it out. */
	set(path: Path, value: Json | undefined): void {
		this.take(put(this.#document, path, value));
	}

	at(path: Path): Json | undefined {
		return at(this.#document, path);
	}

	textAt(path: Path): string {
		return textAt(this.#document, path);
	}

	listAt(path: Path): readonly Json[] {
		return listAt(this.#document, path);
	}

	/** All findings, the gravest first. */
	get findings(): readonly ToldFinding[] {
		return this.#findings;
	}

	get faults(): number {
		return this.#findings.filter((one) => one.severity === 'fault').length;
	}

	/** What the server found when it was asked to publish. */
	serve(findings: readonly ToldFinding[]): void {
		this.#served = findings;
	}

	/** Findings about one field. */
	findingsAt(path: Path): readonly ToldFinding[] {
		return this.#byPath.get(pathKey(path)) ?? [];
	}

	/** How many findings are about a field or what is below it. */
	countBelow(...paths: readonly Path[]): number {
		return this.#findings.filter((one) => paths.some((path) => isBelow(one.path, path))).length;
	}

	#tell(): readonly ToldFinding[] {
		const { problems, inspection, state } = this.inspector;
		const told = toldFindings(this, problems, state === 'broken' ? [] : (inspection?.findings ?? []));
		return [...told, ...this.#served.filter((one) => told.every((other) => other.key !== one.key))];
	}

	/** Opens what a field stands in and puts the focus into it: into the field itself, or the nearest thing above it. */
	async goTo(path: Path): Promise<void> {
		const [first, second] = path;
		if (first === 'words' && (second === 'en' || second === 'es')) this.storyLanguage = second;
		await tick();
		const field = fieldFor(path);
		if (field === undefined) return;
		for (let above = field.parentElement; above !== null; above = above.parentElement) {
			if (above instanceof HTMLDetailsElement) above.open = true;
		}
		field.scrollIntoView({ block: 'center' });
		field.focus({ preventScroll: true });
	}
}

const FOCUSABLE = 'input:not([type=hidden]), select, textarea, button, summary';

/** The control that stands for a path: its own, the first one below it, or that of what it is part of. */
function fieldFor(path: Path): HTMLElement | undefined {
	for (let length = path.length; length > 0; length -= 1) {
		const key = CSS.escape(pathKey(path.slice(0, length)));
		const place = document.querySelector(`[data-path="${key}"]`) ?? document.querySelector(`[data-path^="${key}."]`);
		if (!(place instanceof HTMLElement)) continue;
		if (place.matches(FOCUSABLE)) return place;
		const inside = place.querySelector(FOCUSABLE);
		if (inside instanceof HTMLElement) return inside;
	}
	return undefined;
}

export const [authorOf, setAuthor] = createContext<Author>();
