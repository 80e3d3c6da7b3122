/** The list of withdrawn credentials of an organisation, made from its chain. */
import { SignJWT } from 'jose';
import { isWithdrawn, personRecord } from '#lib/records/index.ts';
import { countCertificates, peopleWithRevocations } from '../db/certificates.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation } from '../db/people.ts';
import { entriesAbout, headOf } from '../db/records.ts';
import { placedRows } from './append.ts';
import { keyAddress, listAddress, profileOf } from './issuer.ts';
import { signingKey } from './keys.ts';
import { bitsOf, encodeBits, roomFor } from './status-bits.ts';

/** @returns the places of the list whose credentials are withdrawn, in order. */
export async function withdrawnPlaces(db: Database, organisation: string): Promise<readonly number[]> {
	const people = await entriesAbout(db, await peopleWithRevocations(db, organisation));
	const places = [...people.values()].flatMap((rows) => {
		const person = personRecord(placedRows(rows));
		return person.trainings.flatMap((one) => (one.certificate !== undefined && isWithdrawn(person, one) ? one.certificate.entry.statusIndex : []));
	});
	return places.toSorted((a, b) => a - b);
}

/** @returns the bits of the list. */
export async function withdrawnBits(db: Database, organisation: string): Promise<Uint8Array> {
	return bitsOf(roomFor(await countCertificates(db, organisation)), await withdrawnPlaces(db, organisation));
}

/** A signed list, and what it was made of. */
interface Kept {
	readonly head: string;
	readonly kid: string;
	readonly token: string;
}

/** The newest list by organisation and address. @reason a list is asked for again and again, and made anew only where the chain has grown */
const kept = new Map<string, Kept>();
/** @reason some organisations on one server; a few kilobytes each */
const MOST_KEPT = 200;

/**
 * @param origin of this server, as others reach it
 * @returns the list as a signed credential (JWT); null where there is no such organisation
 * @source W3C Bitstring Status List, "BitstringStatusListCredential"; W3C VC-JOSE-COSE, "With JOSE"
 */
export async function statusListToken(db: Database, organisation: string, origin: string, now: Date): Promise<string | null> {
	const found = await findOrganisation(db, organisation);
	if (found === null) return null;
	const { hash: head } = (await headOf(db, organisation)) ?? { hash: '' };
	const key = await signingKey(db, 'credential', now);
	const name = `${origin} ${organisation}`;
	const before = kept.get(name);
	if (before?.head === head && before.kid === key.kid) return before.token;
	const id = listAddress(origin, organisation);
	const issuer = profileOf(origin, found);
	const claims = {
		'@context': ['https://www.w3.org/ns/credentials/v2'],
		id,
		type: ['VerifiableCredential', 'BitstringStatusListCredential'],
		issuer: issuer.id,
		validFrom: `${now.toISOString().slice(0, 19)}Z`,
		credentialSubject: { id: `${id}#list`, type: 'BitstringStatusList', statusPurpose: 'revocation', encodedList: await encodeBits(await withdrawnBits(db, organisation)) }
	};
	const token = await new SignJWT(claims).setProtectedHeader({ alg: key.alg, kid: keyAddress(origin, key.kid), typ: 'vc+jwt' }).sign(key.key);
	if (kept.size >= MOST_KEPT) kept.clear();
	kept.set(name, { head, kid: key.kid, token });
	return token;
}
