import type { Role, Who } from '#lib/server/index.ts';
import type { Section } from './routes/sections.ts';

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
			/** The pages of a section, for the head: where they are, and what they are called. */
			sections?: readonly Section[];
		}
		interface PageState {
			/** Of a problem that was drawn on the device, because no signal was there for another site. */
			seed?: number;
		}
	}
}

export {};
