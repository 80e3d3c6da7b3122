/** @returns a calendar day in words, whatever the zone of the reader. @param day YYYY-MM-DD @param month short where room is scarce, in lists and tables */
export function dayText(day: string, language: 'en' | 'es', month: 'long' | 'short' = 'long'): string {
	return new Intl.DateTimeFormat(language, { day: 'numeric', month, year: 'numeric', timeZone: 'UTC' }).format(new Date(day));
}
