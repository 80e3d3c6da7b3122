declare global {
	namespace App {
		interface Locals {
			/** The language of this request's pages, a BCP 47 primary tag. */
			language: string;
		}
	}
}

export {};
