import { argon2, createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { serverKeys } from './key.ts';

/** What a person signs in with: learners have a PIN, staff a password. */
export type SecretKind = 'pin' | 'password';

/** Digits of a PIN. */
export const PIN_LENGTH = 6;

/** Shortest password, characters. @source NIST SP 800-63B-4, 3.1.1.2: 15 where the password is the only factor (from memory). */
export const PASSWORD_LENGTH = 15;

/** Longest password that is read, characters: a longer one only costs work. */
export const LONGEST_PASSWORD = 200;

/** Different characters that a password must have. @reason fifteen times one letter is long, and no secret. */
const LEAST_DIFFERENT = 6;

/**
 * Cost of a hash: memory in KiB, passes, lanes.
 * @source OWASP Password Storage Cheat Sheet, Argon2id, least setting (from memory)
 */
const COST = { memory: 19456, passes: 2, parallelism: 1 } as const;

/** Bytes of salt and of hash. */
const SALT = 16;
const TAG = 32;

/** How many are hashed at once; each takes the memory of COST. */
const AT_ONCE = 3;

/** What a stored text says: `$argon2id$v=19$m=…,t=…,p=…[,keyid=…]$salt$hash`. */
const STORED = /^\$argon2id\$v=19\$m=(\d+),t=(\d+),p=(\d+)(?:,keyid=([0-9a-f]+))?\$([A-Za-z0-9+/]+)\$([A-Za-z0-9+/]+)$/;

interface Cost {
	readonly memory: number;
	readonly passes: number;
	readonly parallelism: number;
}

interface Read {
	readonly cost: Cost;
	/** The server key that was mixed in; undefined for a password. */
	readonly keyId: string | undefined;
	readonly salt: Buffer;
	readonly tag: Buffer;
}

let busy = 0;
const waiting: (() => void)[] = [];

/** Does work that takes memory, so many at once and the others in turn. */
async function inTurn<T>(work: () => Promise<T>): Promise<T> {
	if (busy >= AT_ONCE) await new Promise<void>((go) => waiting.push(go));
	else busy += 1;
	try {
		return await work();
	} finally {
		const next = waiting.shift();
		if (next === undefined) busy -= 1;
		else next();
	}
}

function derive(message: Buffer, salt: Buffer, cost: Cost): Promise<Buffer> {
	return inTurn(
		() =>
			new Promise((done, failed) => {
				argon2('argon2id', { message, nonce: salt, tagLength: TAG, ...cost }, (error, tag) => (error === null ? done(tag) : failed(error)));
			})
	);
}

/** One way of writing for texts that look alike. */
function bytesOf(text: string): Buffer {
	return Buffer.from(text.normalize('NFKC'), 'utf8');
}

function base64(bytes: Buffer): string {
	return bytes.toString('base64').replace(/=+$/, '');
}

function read(stored: string | null): Read | null {
	const [, memory, passes, parallelism, keyId, salt, tag] = STORED.exec(stored ?? '') ?? [];
	if (salt === undefined || tag === undefined) return null;
	return {
		cost: { memory: Number(memory), passes: Number(passes), parallelism: Number(parallelism) },
		keyId,
		salt: Buffer.from(salt, 'base64'),
		tag: Buffer.from(tag, 'base64')
	};
}

/**
 * The text that is stored for a secret: argon2id, with its parameters. A PIN could be guessed from any hash; it is
 * mixed with the server's key first, which is in no database.
 */
export async function hashSecret(kind: SecretKind, text: string): Promise<string> {
	const [key] = serverKeys();
	const salt = randomBytes(SALT);
	const message = kind === 'pin' ? createHmac('sha256', key.bytes).update(bytesOf(text)).digest() : bytesOf(text);
	const tag = await derive(message, salt, COST);
	const keyPart = kind === 'pin' ? `,keyid=${key.id}` : '';
	return `$argon2id$v=19$m=${COST.memory},t=${COST.passes},p=${COST.parallelism}${keyPart}$${base64(salt)}$${base64(tag)}`;
}

/** Whether a secret is the stored one, and whether it should be hashed anew because cost or key have changed. */
export interface Verified {
	readonly ok: boolean;
	readonly rehash: boolean;
}

const REFUSED: Verified = { ok: false, rehash: false };

/**
 * @param stored as `hashSecret` gave it; null for an account that does not exist or has no secret yet, which takes
 * as long as one that has
 */
export async function verifySecret(stored: string | null, text: string): Promise<Verified> {
	const known = read(stored);
	if (known === null) {
		await derive(bytesOf(text), randomBytes(SALT), COST);
		return REFUSED;
	}
	const keys = serverKeys();
	const key = keys.find((one) => one.id === known.keyId);
	if (known.keyId !== undefined && key === undefined) {
		// Hashed under a key that this server was not given: nobody can tell any more what the PIN was.
		await derive(bytesOf(text), known.salt, known.cost);
		return REFUSED;
	}
	const message = key === undefined ? bytesOf(text) : createHmac('sha256', key.bytes).update(bytesOf(text)).digest();
	const tag = await derive(message, known.salt, known.cost);
	if (tag.length !== known.tag.length || !timingSafeEqual(tag, known.tag)) return REFUSED;
	const sameCost = known.cost.memory === COST.memory && known.cost.passes === COST.passes && known.cost.parallelism === COST.parallelism;
	return { ok: true, rehash: !sameCost || (key !== undefined && key.id !== keys[0].id) };
}

/** Whether a text has the form of a PIN. */
export function isPin(text: string): boolean {
	return new RegExp(`^\\d{${PIN_LENGTH}}$`).test(text);
}

/**
 * Whether a PIN is one of those that are tried first: repeats, runs, mirrored, or the personal number itself.
 * @param personalNumber of the person whose PIN it would be
 */
export function weakPin(pin: string, personalNumber = ''): boolean {
	const digits = [...pin].map(Number);
	const strides = digits.slice(1).map((digit, i) => (digit - (digits[i] ?? 0) + 10) % 10);
	const evenStrides = new Set(strides).size === 1;
	const half = PIN_LENGTH / 2;
	const repeated = pin.slice(0, half) === pin.slice(half);
	const mirrored = pin === [...pin].reverse().join('');
	const pairs = digits.every((digit, i) => i % 2 === 0 || digit === digits[i - 1]);
	const numberDigits = personalNumber.replace(/\D/g, '');
	const fromNumber = numberDigits.length >= half && (numberDigits.includes(pin) || pin.includes(numberDigits));
	return evenStrides || repeated || mirrored || pairs || new Set(digits).size < 3 || fromNumber;
}

/** What is wrong with a password: too short, too long, or too easily guessed. */
export type PasswordFault = 'short' | 'long' | 'weak';

/**
 * @param own what others know of the person: name, e-mail; a password made of one of these alone is refused
 * @returns null for a password that may be taken
 */
export function passwordFault(text: string, own: readonly string[] = []): PasswordFault | null {
	const characters = [...text.normalize('NFKC')];
	if (characters.length < PASSWORD_LENGTH) return 'short';
	if (characters.length > LONGEST_PASSWORD) return 'long';
	const plain = characters.join('').toLowerCase();
	if (new Set(plain).size < LEAST_DIFFERENT) return 'weak';
	return own.some((one) => one !== '' && one.toLowerCase() === plain) ? 'weak' : null;
}
