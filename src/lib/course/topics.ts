/**
 * The topics that laws name for training, and the lessons that treat them. What no lesson treats is named with the
 * reason; a topic can be treated in part. The order of the lessons follows from it: see the method page.
 */
import type { Mark } from '#lib/rules/index.ts';
import type { LessonId } from './lesson.ts';

/** Why a topic, or a part of it, is left to others. */
export const OPEN_REASONS = ['hands-on', 'maker', 'employer', 'other-system'] as const;
export type OpenReason = (typeof OPEN_REASONS)[number];

interface LawTopic {
	/** Law and item; the topic's words stand in the catalogue under it. */
	readonly id: string;
	/** As the law numbers it; empty where it does not. */
	readonly item: string;
	readonly lessons: readonly LessonId[];
	readonly open: readonly OpenReason[];
}

export interface TopicList {
	readonly id: string;
	/** Clause and title of the law. */
	readonly clause: string;
	readonly title: string;
	readonly mark: Mark;
	readonly topics: readonly LawTopic[];
}

export const TOPIC_LISTS = [
	{
		id: 'us-construction',
		clause: '1926.503(a)(2)(i)–(viii)',
		title: '29 CFR 1926.503 (Subpart M)',
		mark: 'read',
		topics: [
			{ id: 'us-construction.hazards', item: '(i)', lessons: ['stages', 'available-clearance', 'swing'], open: ['employer'] },
			{ id: 'us-construction.upkeep', item: '(ii)', lessons: ['before-and-after'], open: ['hands-on', 'maker'] },
			{
				id: 'us-construction.use',
				item: '(iii)',
				lessons: ['label', 'free-fall', 'required-clearance', 'available-clearance', 'force', 'swing', 'before-and-after'],
				open: ['other-system']
			},
			{ id: 'us-construction.monitor', item: '(iv)', lessons: [], open: ['other-system'] },
			{ id: 'us-construction.machines', item: '(v)', lessons: [], open: ['other-system'] },
			{ id: 'us-construction.storage', item: '(vi)', lessons: [], open: ['maker', 'employer'] },
			{ id: 'us-construction.plan', item: '(vii)', lessons: ['before-and-after'], open: ['employer'] },
			{ id: 'us-construction.law', item: '(viii)', lessons: ['label', 'free-fall', 'force', 'before-and-after'], open: ['employer'] }
		]
	},
	{
		id: 'us-general-industry',
		clause: '1910.30(a)(3)(i)–(iv)',
		title: '29 CFR 1910.30 (Subpart D)',
		mark: 'read',
		topics: [
			{ id: 'us-general-industry.hazards', item: '(i)', lessons: ['stages', 'available-clearance', 'swing'], open: ['employer'] },
			{
				id: 'us-general-industry.procedures',
				item: '(ii)',
				lessons: ['free-fall', 'required-clearance', 'available-clearance', 'force', 'swing', 'before-and-after'],
				open: ['employer']
			},
			{ id: 'us-general-industry.upkeep', item: '(iii)', lessons: ['before-and-after'], open: ['hands-on', 'maker', 'other-system'] },
			{ id: 'us-general-industry.use', item: '(iv)', lessons: ['label', 'free-fall', 'before-and-after'], open: ['hands-on', 'maker'] }
		]
	},
	{
		id: 'ca-alberta',
		clause: 's. 141',
		title: 'Occupational Health and Safety Code (Alberta), Part 9, text of 2009',
		mark: 'read',
		topics: [
			{ id: 'ca-alberta.law', item: '', lessons: ['free-fall', 'force', 'before-and-after'], open: ['employer'] },
			{ id: 'ca-alberta.plan', item: '', lessons: ['before-and-after'], open: ['employer'] },
			{ id: 'ca-alberta.methods', item: '', lessons: ['before-and-after'], open: ['other-system'] },
			{ id: 'ca-alberta.hazards', item: '', lessons: ['stages', 'available-clearance', 'swing'], open: ['employer'] },
			{ id: 'ca-alberta.anchorages', item: '', lessons: ['free-fall', 'swing', 'before-and-after'], open: ['hands-on'] },
			{ id: 'ca-alberta.connecting', item: '', lessons: ['label', 'before-and-after'], open: ['hands-on'] },
			{ id: 'ca-alberta.body', item: '', lessons: ['stages', 'free-fall', 'force', 'swing'], open: [] },
			{ id: 'ca-alberta.inspection', item: '', lessons: ['before-and-after'], open: ['hands-on'] },
			{ id: 'ca-alberta.emergency', item: '', lessons: ['before-and-after'], open: ['employer', 'hands-on'] },
			{ id: 'ca-alberta.practice', item: '', lessons: [], open: ['hands-on'] }
		]
	},
	{
		id: 'ca-offshore',
		clause: 's. 112(1)',
		title: 'SOR/2021-247 and SOR/2021-248 (offshore areas of Newfoundland and Labrador, and of Nova Scotia)',
		mark: 'read',
		topics: [
			{ id: 'ca-offshore.law', item: '', lessons: ['before-and-after'], open: ['employer'] },
			{ id: 'ca-offshore.hazards', item: '', lessons: ['stages', 'available-clearance', 'swing'], open: ['employer'] },
			{ id: 'ca-offshore.order', item: '', lessons: ['before-and-after'], open: ['employer'] },
			{ id: 'ca-offshore.means', item: '', lessons: ['required-clearance', 'available-clearance', 'before-and-after'], open: ['other-system'] },
			{ id: 'ca-offshore.choice', item: '', lessons: ['label', 'force', 'before-and-after'], open: ['other-system'] },
			{ id: 'ca-offshore.body', item: '', lessons: ['stages', 'free-fall', 'force', 'swing'], open: [] },
			{ id: 'ca-offshore.use', item: '', lessons: ['before-and-after'], open: ['hands-on', 'maker'] },
			{ id: 'ca-offshore.emergency', item: '', lessons: ['before-and-after'], open: ['hands-on', 'employer'] }
		]
	}
] as const satisfies readonly TopicList[];

export type TopicListId = (typeof TOPIC_LISTS)[number]['id'];
export type TopicId = (typeof TOPIC_LISTS)[number]['topics'][number]['id'];
