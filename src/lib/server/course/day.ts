/** @returns the local date in a zone, YYYY-MM-DD: the date of training is the date at the site. @param zone an IANA zone */
export function dayIn(zone: string, now: Date): string {
	const parts = new Intl.DateTimeFormat('en-GB', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' }).formatToParts(now);
	const part = (type: 'year' | 'month' | 'day'): string => parts.find((one) => one.type === type)?.value ?? '';
	return `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`;
}
