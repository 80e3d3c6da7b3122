/** Tasks asked on pictures: drawn gear, drawn situations, moments of a fall. */
import type { SourceMark, Stage } from '#lib/findings/index.ts';
import { looks } from './finding-looks.ts';
import { notes } from './finding-notes.ts';

export interface FindingTaskText {
	readonly title: string;
	readonly lead: string;
	readonly ask: string;
	readonly choose: string;
}

const UNFIT = 'Mark each part that must not be used as it is.';
const WRONG = 'Mark everything that is wrong.';

export const findings = {
	tasks: {
		'gear-harness': {
			title: 'A harness before it is put on',
			lead: 'You take the harness from its hook and look at each part.',
			ask: UNFIT,
			choose: 'What do you do with the harness?'
		},
		'gear-lanyards': {
			title: 'Two lanyards with energy absorber',
			lead: 'Two lanyards lie on the bench. You need one.',
			ask: UNFIT,
			choose: 'Which of them may be used?'
		},
		'gear-connectors': {
			title: 'Six hooks',
			lead: 'Six snap hooks hang on the board. No hand is on them.',
			ask: 'Mark each hook that must not be used.',
			choose: 'What do you do with this set?'
		},
		'gear-worn-back': {
			title: 'A worn harness from behind',
			lead: 'Your workmate asks you to look at the back.',
			ask: 'Mark everything that must not stay like this.',
			choose: 'What must be done before the work?'
		},
		'gear-worn-front': {
			title: 'A worn harness from the front',
			lead: 'Your workmate has put the harness on. You look at the front.',
			ask: 'Mark everything that must not stay like this.',
			choose: 'What must be done before the work?'
		},
		'gear-swatches': {
			title: 'Six places close up',
			lead: 'You look at six places of one harness, close up.',
			ask: 'Mark each place that takes the harness out of use.',
			choose: 'What do you do with the harness?'
		},
		'site-roof-edge': {
			title: 'At the edge of a flat roof',
			lead: 'The work is about to begin. The tag on a plate tells who has approved it, and for one person.',
			ask: WRONG,
			choose: 'Do you let the work begin?'
		},
		'site-twin-legs': {
			title: 'Up a mast with twin legs',
			lead: 'Left: her next step takes her past the flange. Right: she works, with one leg in use and one spare.',
			ask: WRONG,
			choose: 'Is this the way to go on?'
		},
		'site-hook-ups': {
			title: 'Six ways to hook on',
			lead: 'Six hooks, each as it would be loaded. A tag beside a ring says what the maker has rated.',
			ask: 'Mark each one that must not be loaded like this.',
			choose: 'Do you let the work begin?'
		},
		'site-restraint': {
			title: 'A roof seen from above',
			lead: 'She works in the middle of the roof. The dotted ring is how far her line lets her go.',
			ask: WRONG,
			choose: 'Do you let the work begin?'
		},
		'site-rescue': {
			title: 'Before the work: the rescue',
			lead: 'The broken line shows how high the work place is. You go through the rescue plan.',
			ask: 'Mark everything that is missing or wrong.',
			choose: 'Do you let the work begin?'
		},
		'site-steel': {
			title: 'Under a steel beam',
			lead: 'Two workers are tied off to a beam. You see each beam end on.',
			ask: WRONG,
			choose: 'Do you let them go on?'
		},
		'moment-now': {
			title: 'One moment of a fall',
			lead: 'The picture stands still. The tape shows the lengths of the plan.',
			ask: 'Mark each length that the fall is using or has used.',
			choose: 'Which stage of the fall is this?'
		},
		'moment-used-up': {
			title: 'How far it still goes',
			lead: 'The picture stands still. At the left is how far the soles have come down.',
			ask: 'Mark each length that is wholly used up.',
			choose: 'How far do the soles still go down until she hangs still?'
		},
		'moment-pull': {
			title: 'Five moments of one fall',
			lead: 'They are not in the order of time. The broken line is the walking surface.',
			ask: 'Mark each moment at which the lanyard pulls on her.',
			choose: 'At which moment is she fastest?'
		},
		'moment-faster': {
			title: 'Faster or slower',
			lead: 'Six moments of one fall, not in the order of time. One has a frame.',
			ask: 'Mark each moment at which she is faster than in the frame.',
			choose: 'At which of these does the lanyard pull harder? Take the average force.'
		}
	} as Readonly<Record<string, FindingTaskText>>,
	choices: {
		use: 'Use it',
		'put-right': 'Put it right, look again, then use it',
		'take-out': 'Take it out of use',
		first: 'The first one only',
		second: 'The second one only',
		both: 'Both',
		neither: 'Neither',
		'go-on': 'Go on',
		stop: 'Do not go on',
		standing: 'Still standing',
		'free-fall': 'Free fall',
		slowing: 'The absorber opens, the fall slows',
		hanging: 'Stopped, hanging',
		same: 'The same at both'
	} as Readonly<Record<string, string>>,
	stages: {
		standing: 'still standing',
		'free-fall': 'in free fall',
		slowing: 'the absorber opens',
		hanging: 'stopped, hanging'
	} as Readonly<Record<Stage, string>>,
	/** Names of the parts by their id; those that are counted by their stem. */
	parts: {
		'shoulder-left': 'Left shoulder strap',
		'shoulder-right': 'Right shoulder strap',
		'back-ring': 'D-ring on the back',
		'chest-buckle': 'Chest buckle',
		label: 'Label',
		'stitch-left': 'Stitches at the left hip',
		'stitch-right': 'Stitches at the right hip',
		'leg-left': 'Left leg strap',
		'leg-right': 'Right leg strap',
		'first-hook': 'First lanyard, hook',
		'first-seam': 'First lanyard, stitches',
		'first-line': 'First lanyard, webbing',
		'first-pack': 'First lanyard, absorber pack',
		'first-tag': 'First lanyard, label',
		'second-hook': 'Second lanyard, hook',
		'second-seam': 'Second lanyard, stitches',
		'second-line': 'Second lanyard, webbing',
		'second-pack': 'Second lanyard, absorber pack',
		'second-tag': 'Second lanyard, label',
		'lanyard-end': 'End of the lanyard',
		'seat-strap': 'Seat strap',
		'chest-strap': 'Chest strap',
		'leg-buckle-left': 'Left leg buckle',
		'leg-buckle-right': 'Right leg buckle',
		'strap-end': 'End of the belt strap',
		anchorage: 'Anchorage',
		people: 'People on the anchorage',
		packs: 'Absorber',
		'edge-line': 'Line at the edge',
		'rescue-post': 'Rescue post',
		'leg-front': 'Changing over, first leg',
		'leg-back': 'Changing over, second leg',
		'leg-holding': 'At work, leg in use',
		'leg-spare': 'At work, spare leg',
		'side-north': 'Upper edge',
		'side-east': 'Right edge',
		'side-south': 'Lower edge',
		hole: 'Opening in the roof',
		names: 'Board for names',
		kit: 'Rescue kit',
		helper: 'Second person',
		reach: 'Lift',
		way: 'Ground below',
		'hold-first': 'Left: made fast at the beam',
		'hold-second': 'Right: made fast at the beam',
		'packs-first': 'Left: absorber',
		'packs-second': 'Right: absorber',
		'attachment-first': 'Left: end at the worker',
		'attachment-second': 'Right: end at the worker',
		'free-fall': 'Free fall',
		elongation: 'Elongation',
		stretch: 'Slide and stretch',
		margin: 'Margin'
	} as Readonly<Record<string, string>>,
	counted: {
		hook: ({ n }) => `Hook ${n}`,
		strap: ({ n }) => `Strap ${n}`,
		seam: ({ n }) => `Stitches ${n}`,
		'hook-up': ({ n }) => `Hook ${n}`,
		moment: ({ n }) => `Moment ${n}`
	} as Readonly<Record<string, (p: { readonly n: string }) => string>>,
	looks,
	notes,
	/** What is to be seen of a moment, for those who do not see the drawing. All lengths with their unit. */
	momentSeen: ({ soles, line }: { soles: string; line: string }) => `The soles are ${soles} below the walking surface. ${line}`,
	lineSlack: 'The lanyard hangs in a bow.',
	lineTight: ({ run }: { run: string }) => `The lanyard is straight. The absorber has run out ${run}.`,
	standsStill: 'She stands on the walking surface. The lanyard hangs in a bow.',
	termSeen: ({ length }: { length: string }) => `${length} on the tape.`,
	framed: ({ seen }: { seen: string }) => `In the frame: ${seen}`,
	lengthsSeen: ({ lanyard, anchorage, dRing }: { lanyard: string; anchorage: string; dRing: string }) =>
		`The lanyard is ${lanyard} long. Before the fall the anchorage is ${anchorage} and the D-ring ${dRing} above the walking surface.`,
	fallenSeen: ({ fallen }: { fallen: string }) => `The soles have come down ${fallen}.`,
	nothing: 'Nothing to mark',
	list: 'All parts as a list',
	momentFacts: ({ stage, t, v, pull }: { stage: string; t: string; v: string; pull: string }) =>
		`After ${t}: ${stage}. Speed ${v}. The lanyard pulls ${pull} times her weight.`,
	averagePull: 'The pull is an average, for understanding. It is never the peak.',
	/** Over the explained picture. */
	right: 'Right. You have seen everything.',
	missed: ({ count }: { count: number }) => (count === 1 ? 'You missed one.' : `You missed ${String(count)}.`),
	extra: ({ count }: { count: number }) => (count === 1 ? 'One mark too many.' : `${String(count)} marks too many.`),
	wrongChoice: ({ right }: { right: string }) => `Right would be: ${right}.`,
	marksRight: 'Your marks are right.',
	yourMark: 'you marked it',
	youMissed: 'you missed it',
	notToMark: 'not to be marked',
	toMark: 'to be marked',
	whatToDo: ({ act }: { act: string }) => `What to do: ${act}`,
	source: ({ what }: { what: string }) => `Source: ${what}`,
	marks: {
		read: 'read',
		secondary: 'read in a copy',
		memory: 'from memory',
		practice: 'common practice, no source'
	} as Readonly<Record<SourceMark, string>>,
	makerDecides: 'The maker’s instructions, local law and a competent person decide.'
};
