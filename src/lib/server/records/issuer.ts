/** Addresses of what an organisation issues, as they stand in credentials. */
import type { Profile } from '#lib/records/index.ts';

const ISSUER = /^https?:\/\/[^/?#]+\/issuers\/([0-9a-f-]{36})$/;

/** Where the public halves of the keys are. @param origin of this server, as others reach it */
export function keySetAddress(origin: string): string {
	return `${origin}/.well-known/jwks.json`;
}

/** What a key is called in tokens: the address of the set with the thumbprint of the key behind it. @source Open Badges 3.0, section "Create the JOSE Header": a URI that leads to the key */
export function keyAddress(origin: string, thumbprint: string): string {
	return `${keySetAddress(origin)}#${thumbprint}`;
}

/** The organisation as the issuer of credentials. @source Open Badges 3.0, Profile */
export function profileOf(origin: string, organisation: { readonly id: string; readonly name: string }): Profile {
	return { id: `${origin}/issuers/${organisation.id}`, type: ['Profile'], name: organisation.name };
}

/** Where an organisation's list of withdrawn credentials is. */
export function listAddress(origin: string, organisation: string): string {
	return `${origin}/issuers/${organisation}/revoked`;
}

/** @returns the organisation that an issuer's address names, under whatever address the server was reached then; null for none. */
export function organisationIn(issuer: string): string | null {
	return ISSUER.exec(issuer)?.[1] ?? null;
}
