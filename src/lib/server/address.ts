/** Where others reach this server. */

/** What is read of the environment. */
export interface AddressEnvironment {
	readonly UNDERFOOT_ADDRESS?: string | undefined;
}

/**
 * @param asked the address that was asked: taken where none is set
 * @returns the origin under which certificates and credentials are checked, without a slash at its end: https://training.example.org
 * @throws Error where UNDERFOOT_ADDRESS is none
 */
export function publicAddress(env: AddressEnvironment, asked: URL): string {
	const set = env.UNDERFOOT_ADDRESS ?? '';
	if (set === '') return asked.origin;
	const url = URL.parse(set);
	if (url === null || !['https:', 'http:'].includes(url.protocol) || url.origin !== set.replace(/\/$/, '')) {
		throw new Error('UNDERFOOT_ADDRESS must be the address of the start page and no more, as in https://training.example.org');
	}
	return url.origin;
}
