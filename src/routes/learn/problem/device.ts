/** The effects of a site problem in the browser: store, network, ids. Nothing here decides anything. */
import { createOutbox, type Grades, type Outbox, type Posted, type SendOutcome } from '#lib/flow/index.ts';

const OUTBOX = 'underfoot.outbox';
const PROBLEM = 'underfoot.problem.';
const RECENT = 'underfoot.recent';
const MIX = 'underfoot.mix';

/** How many problems are remembered on a device. @reason a reload and a few steps back; more fills the store. */
const MOST_REMEMBERED = 24;
/** After this long without an answer of the server, the answer waits, ms. */
const PATIENCE = 10_000;

/** The browser's store; a store that is closed or full forgets, and nothing else happens. */
function read(key: string): string | null {
	try {
		return localStorage.getItem(key);
	} catch {
		return null;
	}
}

function write(key: string, text: string): void {
	try {
		localStorage.setItem(key, text);
	} catch {
		// A full or closed store: practice goes on without it.
	}
}

function drop(key: string): void {
	try {
		localStorage.removeItem(key);
	} catch {
		// As above.
	}
}

/** @param name what the problem goes by on this device. @returns what was kept of it, or null. */
export function remembered(name: string): string | null {
	return read(`${PROBLEM}${name}`);
}

/** Keeps a problem, and lets go of the oldest of many. */
export function remember(name: string, text: string): void {
	const key = `${PROBLEM}${name}`;
	const recent = [key, ...(read(RECENT) ?? '').split(' ').filter((one) => one !== '' && one !== key)];
	for (const old of recent.slice(MOST_REMEMBERED)) drop(old);
	write(RECENT, recent.slice(0, MOST_REMEMBERED).join(' '));
	write(key, text);
}

/** The device's own number and how many problems it has had: what the mix is made from. */
export function mixPlace(): { readonly device: number; readonly counter: number } {
	const [device, counter] = (read(MIX) ?? '').split(' ').map(Number);
	if (device !== undefined && counter !== undefined && Number.isSafeInteger(device) && Number.isSafeInteger(counter) && counter >= 0) {
		return { device, counter };
	}
	const place = { device: crypto.getRandomValues(new Uint32Array(1))[0] ?? 0, counter: 0 };
	write(MIX, `${place.device} ${place.counter}`);
	return place;
}

/** One problem more was taken from the mix. */
export function countProblem(): void {
	const { device, counter } = mixPlace();
	write(MIX, `${device} ${counter + 1}`);
}

/** @returns an id that nobody else has: a UUID. Also where the page came without TLS, and `randomUUID` is not there. */
export function newId(): string {
	const bytes = crypto.getRandomValues(new Uint8Array(16));
	const hex = [...bytes].map((byte, i) => (i === 6 ? (byte & 0x0f) | 0x40 : i === 8 ? (byte & 0x3f) | 0x80 : byte));
	const text = hex.map((byte) => byte.toString(16).padStart(2, '0')).join('');
	return [text.slice(0, 8), text.slice(8, 12), text.slice(12, 16), text.slice(16, 20), text.slice(20)].join('-');
}

/** Sends one answer; whatever goes wrong on the way is an outcome, never an error. */
async function send(posted: Posted): Promise<SendOutcome> {
	try {
		const response = await fetch('/api/attempts', {
			method: 'POST',
			headers: { 'content-type': 'application/json' },
			body: JSON.stringify({ id: posted.id, ...posted.body }),
			signal: AbortSignal.timeout(PATIENCE)
		});
		if (response.ok) return { kind: 'stored', grades: gradesIn(await response.json()) };
		const passing = response.status >= 500 || response.status === 408 || response.status === 429;
		return { kind: passing ? 'later' : 'refused' };
	} catch {
		return { kind: 'later' };
	}
}

/** The server is our own and grades with the same code: its grades are taken for what they are. */
function gradesIn(body: unknown): Grades {
	return typeof body === 'object' && body !== null && 'grades' in body ? (body.grades as Grades) : {};
}

/** @returns the grades that the server stored with an answer, or undefined. */
export async function storedGrades(id: string): Promise<Grades | undefined> {
	try {
		const response = await fetch(`/api/attempts/${id}`, { signal: AbortSignal.timeout(PATIENCE) });
		return response.ok ? gradesIn(await response.json()) : undefined;
	} catch {
		return undefined;
	}
}

/** @returns the box of answers that wait on this device. */
export function deviceOutbox(): Outbox {
	return createOutbox({ read: () => read(OUTBOX), write: (text) => write(OUTBOX, text) }, send);
}
