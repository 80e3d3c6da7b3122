/** @returns a person's name; of one that is forgotten, the words for that. @param name empty where it is forgotten */
export function shownName(name: string, erased: string): string {
	return name === '' ? erased : name;
}
