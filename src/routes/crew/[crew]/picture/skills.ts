/** Names of the finer skills, by the id under which answers are counted. */
import { isQuantityId, type Datum } from '#lib/arrest/index.ts';
import type { Messages, StaffMessages } from '#lib/text/index.ts';

/** A quantity with its datum, `requiredClearance@anchorage`; `decision`; or a skill of pictures. */
export function skillName(m: Messages & StaffMessages, skill: string): string {
	if (skill === 'decision') return m.crewPicture.decision;
	const [quantity = '', datum = ''] = skill.split('@');
	if (!isQuantityId(quantity)) return m.crewPicture.skills[skill] ?? skill;
	const { name } = m.quantities[quantity];
	const from = isDatum(m, datum) ? m.datums[datum].name : undefined;
	return from === undefined ? name : m.crewPicture.skillFrom({ name, from: from.toLocaleLowerCase() });
}

function isDatum(m: Messages, text: string): text is Datum {
	return Object.hasOwn(m.datums, text);
}
