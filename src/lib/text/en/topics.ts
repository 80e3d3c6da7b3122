/** The topics that laws name for training, in our own words, and how the course answers them. */
import type { OpenReason, TopicId, TopicListId } from '#lib/course/index.ts';

export const topics = {
	heading: 'What the course treats, and why in this order',
	lead: [
		'Some laws list what training must hold. Each topic stands here with the lessons that treat it.',
		'Where a topic goes beyond this course, the table says who has to see to the rest.'
	],
	order: [
		'Most lists begin with the hazard. So the first lesson shows a fall.',
		'Then come the numbers, in the order in which a plan needs them. The label comes first. Free fall, required clearance and available clearance follow.',
		'Force and swing come after that, because both rest on the free fall.',
		'Gear, people, places and rescue come last. There the worker needs all of it.'
	],
	columns: { item: 'Item', topic: 'Topic', lessons: 'Lessons', open: 'Left to others' },
	/** In place of an empty cell. */
	nothing: 'nothing',
	noLesson: 'no lesson',
	open: {
		'hands-on': 'practice with the gear, under a trainer',
		maker: 'the maker’s instructions',
		employer: 'the employer, for the own site',
		'other-system': 'another system'
	} as Readonly<Record<OpenReason, string>>,
	trainer: {
		'us-construction': 'A competent person must give this training.',
		'us-general-industry': 'A qualified person must give this training.',
		'ca-alberta': 'Practice with the gear is part of this list.',
		'ca-offshore': 'Use and emergency response are to be practised.'
	} as Readonly<Record<TopicListId, string>>,
	of: {
		'us-construction.hazards': 'What the hazards of a fall are',
		'us-construction.upkeep': 'How systems are put up, kept, inspected and taken down',
		'us-construction.use': 'How each kind of system is used',
		'us-construction.monitor': 'The part of those who watch over others',
		'us-construction.machines': 'Limits for machines on roofs of low slope',
		'us-construction.storage': 'How gear and materials are handled and stored; protection overhead',
		'us-construction.plan': 'The worker’s part in a fall protection plan',
		'us-construction.law': 'The rules of the subpart',
		'us-general-industry.hazards': 'The hazards of a fall, and how to see them',
		'us-general-industry.procedures': 'What to do to keep the hazards small',
		'us-general-industry.upkeep': 'How systems are put up, inspected, run, kept and taken down',
		'us-general-industry.use': 'Hook-up, anchorage, tie-off, inspection and storage as the maker says',
		'ca-alberta.law': 'The law',
		'ca-alberta.plan': 'What a fall protection plan is',
		'ca-alberta.methods': 'The methods of fall protection',
		'ca-alberta.hazards': 'How to see hazards',
		'ca-alberta.anchorages': 'How to judge and choose an anchorage',
		'ca-alberta.connecting': 'Hardware that connects',
		'ca-alberta.body': 'What a fall does to the body: arrest force, absorber, swing, free fall',
		'ca-alberta.inspection': 'Inspection before use',
		'ca-alberta.emergency': 'What to do in an emergency',
		'ca-alberta.practice': 'Practice with the gear',
		'ca-offshore.law': 'The law, and who does what',
		'ca-offshore.hazards': 'The hazards',
		'ca-offshore.order': 'The order of measures',
		'ca-offshore.means': 'Means of protection, and where each fits',
		'ca-offshore.choice': 'How to choose parts and anchorages',
		'ca-offshore.body': 'What free fall, swing and arrest do to the body: arrest force, absorber',
		'ca-offshore.use': 'Use, storage and inspection, with practice',
		'ca-offshore.emergency': 'What to do in an emergency, with practice'
	} as Readonly<Record<TopicId, string>>
};
