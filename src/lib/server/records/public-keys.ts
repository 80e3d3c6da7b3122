/** The public keys that credentials are checked with. */
import type { JWK } from 'jose';
import type { Database } from '../db/open.ts';
import { keyAddress } from './issuer.ts';
import { publicKeys } from './keys.ts';

/** @returns the set of all keys that ever signed credentials, retired ones too: what they signed stays good. @source RFC 7517, section 5 */
export async function credentialKeySet(db: Database, origin: string): Promise<{ readonly keys: readonly JWK[] }> {
	const keys = await publicKeys(db, 'credential');
	return { keys: keys.map(({ kid, jwk }) => ({ ...jwk, kid: keyAddress(origin, kid) })) };
}
