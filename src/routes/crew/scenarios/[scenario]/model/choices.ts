/** What can be chosen of tables that the browser does not hold: told by the server. */
export interface Choices {
	readonly rules: readonly {
		readonly id: string;
		readonly jurisdiction: string;
		readonly title: string;
		/** Ids of limits that have a greatest value, for decoys. */
		readonly limits: readonly { readonly id: string; readonly clause: string }[];
	}[];
	readonly practices: readonly { readonly id: string; readonly title: string }[];
	readonly absorbers: readonly { readonly id: string; readonly title: string }[];
}
