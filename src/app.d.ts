import type { Role, Who } from '#lib/server/index.ts';

declare global {
	namespace App {
		interface Locals {
			/** The language of this request's pages, a BCP 47 primary tag. */
			language: 'en' | 'es';
			/** How this request's pages are coloured. */
			theme: 'system' | 'light' | 'dark';
			/** Who asks: signed in, or a guest. */
			who: Who;
		}
		interface PageData {
			/** Who is signed in; null for a guest. */
			who?: { readonly name: string; readonly role: Role } | null;
		}
		interface PageState {
			/** Of a problem that was drawn on the device, because no signal was there for another site. */
			seed?: number;
		}
	}
}

export {};
