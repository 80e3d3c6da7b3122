import { describe, expect, test } from 'vitest';
import { COURSE_CELLS } from '#lib/course/index.ts';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { FINDING_TASKS } from '#lib/findings/index.ts';
import { skillOf } from '#lib/flow/index.ts';
import { LANGUAGES, messages, staffMessages } from '#lib/text/index.ts';
import { searchOf } from '../../../../src/routes/crew/[crew]/picture/address.ts';
import { skillName } from '../../../../src/routes/crew/[crew]/picture/skills.ts';
import { chartOf, lastWeeks, MOST_WEEKS, type Week } from '../../../../src/routes/crew/[crew]/picture/trend.ts';

function week(day: string, wrong: number, answers = 10, critical = 0): Week {
	return { week: day, answers, wrong, critical };
}

describe('the trend', () => {
	test('shows half a year at most', () => {
		const mondays = Array.from({ length: 40 }, (_, i) => week(new Date(Date.UTC(2026, 0, 5 + 7 * i)).toISOString().slice(0, 10), 1));
		expect(lastWeeks(mondays)).toEqual(mondays.slice(-MOST_WEEKS));
		expect(lastWeeks([])).toEqual([]);
		// Weeks are counted by the calendar: what lies further back than half a year is left out, answers between or not.
		expect(lastWeeks([week('2026-01-05', 3), week('2026-11-23', 1)])).toEqual([week('2026-11-23', 1)]);
	});

	test('draws a bar a week, as high as its share, with those on the unsafe side at its foot', () => {
		const { bars, lines, base } = chartOf([week('2026-11-02', 5, 10, 2), week('2026-11-09', 0), week('2026-11-16', 2, 8, 2)]);
		const top = base - (lines.at(-1)?.y ?? 0);
		expect(lines.map(({ share }) => share)).toEqual([0, 0.25, 0.5]);
		expect(bars.map(({ wrong, critical }) => [wrong / top, critical / top])).toEqual([[1, 0.4], [0, 0], [0.5, 0.5]]);
	});

	test('leaves room for weeks without answers', () => {
		const { bars } = chartOf([week('2026-11-02', 1), week('2026-11-09', 1), week('2026-11-23', 1)]);
		const [first = 0, second = 0, third = 0] = bars.map(({ x }) => x);
		expect(third - second).toBeCloseTo(2 * (second - first));
	});

	test('stays inside, and tells whole shares', () => {
		for (const count of [1, 2, 26]) {
			const chart = chartOf(Array.from({ length: count }, (_, i) => week(new Date(Date.UTC(2026, 0, 5 + 7 * i)).toISOString().slice(0, 10), 10, 10, 10)));
			for (const bar of chart.bars) {
				expect(bar.x).toBeGreaterThanOrEqual(chart.left);
				expect(bar.x + bar.width).toBeLessThanOrEqual(chart.width);
				expect(bar.wrong).toBeLessThanOrEqual(chart.base);
			}
			expect(chart.lines.at(-1)?.share).toBe(1);
		}
	});
});

describe('names', () => {
	test.each(LANGUAGES)('of all cells and finer skills stand in %s', async (language) => {
		const m = { ...(await messages(language)), ...(await staffMessages(language)) };
		const skills = new Set([...shippedScenarios().flatMap(({ asks }) => asks.map(skillOf)), ...FINDING_TASKS.flatMap((task) => task.skills)]);
		for (const skill of skills) expect(skillName(m, skill), skill).not.toBe(skill);
		for (const cell of COURSE_CELLS) expect(m.crewPicture.cells[cell]).toMatch(/\p{L}/u);
		expect(new Set([...skills].map((skill) => skillName(m, skill))).size).toBe(skills.size);
	});

	test('say from where a clearance is measured', async () => {
		const m = { ...(await messages('en')), ...(await staffMessages('en')) };
		expect(skillName(m, 'requiredClearance@anchorage')).toBe('Required clearance: from the anchorage');
		expect(skillName(m, 'freeFall')).toBe('Free fall');
	});
});

test('an address keeps what is chosen, and says nothing of what is not', () => {
	const plain = { scenario: '', set: '', from: '', to: '' };
	expect(searchOf(plain)).toBe('');
	expect(searchOf({ ...plain, from: '2026-11-01', set: 'a b&c' }, { cell: 'free-fall', person: undefined })).toBe('set=a+b%26c&from=2026-11-01&cell=free-fall');
});
