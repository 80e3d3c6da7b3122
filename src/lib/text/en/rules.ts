/**
 * Words around the rule tables: where they hold, remarks, how a number is known. The numbers themselves
 * stand in shared/ and are printed from there.
 */
import type { Confidence, FactName, Mark, QuantityName, Subject } from '#lib/rules/index.ts';
import type { Explained } from '../parts.ts';

export const rules = {
	/** Keys `rules.scope.…` of the tables. */
	scope: {
		'us-construction': 'Construction work under federal law',
		'us-general-industry': 'General industry under federal law',
		'ca-ontario': 'Construction projects',
		'ca-alberta': 'All work under the provincial code',
		'ca-quebec': 'Construction sites',
		eu: 'Fall arrest equipment and its standards',
		uk: 'All work at height',
		au: 'Construction work; numbers of law from Queensland'
	},
	/** Keys `rules.note.…` of limits and values. */
	note: {
		albertaOrder: 'Guardrails come first, then travel restraint, then fall arrest.',
		albertaTraining: 'The law lists what the training must cover. Practice with the gear is part of it.',
		allowableStress: 'This is a load within the allowable stress of the support, not its breaking strength.',
		anchorPerUser: 'Each further user adds to the strength asked. It is a test load of the standard.',
		auRescue: 'The law asks for emergency steps, with rescue, that have been tested.',
		below310: 'The limit itself is already too much. From there on, somebody entitled must adapt the system.',
		classE6: 'The higher force holds only for class E6, used as its label and instructions say.',
		clearZone: 'The clear zone takes in the swing as well.',
		en355Elongation: 'The standard bounds the arrest distance by twice the lanyard length plus this value.',
		europeNumbers: 'The law sets no number for clearance. Numbers come from standards and from the maker.',
		factorTwo: 'There are two ways to hold it: this strength, or a system that is designed for twice the arrest force.',
		fromStandard: 'The number comes from a standard, not from the law itself.',
		highestPracticable: 'The anchorage must not be below the shoulder. The lanyard must be as short as it can be.',
		lengthWithAbsorber: 'The length counts with the absorber and the connectors.',
		limitedFreeFall: 'The lower strength holds only for a limited free fall as the standard defines it.',
		longerFreeFall: 'A longer free fall needs a maker’s design for it and tests that keep the force down.',
		noContact: 'The law sets no number. The body must not meet what is below.',
		ontarioOrder: 'Guardrails come first. If they cannot be used: travel restraint, fall restricting, fall arrest or a net.',
		ontarioTraining: 'Work at heights needs an approved course, and training for the site itself.',
		quebecAngle: 'The law also names an angle of 22°. That is not checked here.',
		quebecOnePerson: 'One person to an anchorage.',
		quebecOr: 'The law joins the two by “or”: to hold one of them is enough.',
		stretchAlsoQuoted: 'Other figures are quoted too. Use the harness’s own where it states one.',
		testFall: 'This is the fall of the test. The label of the device comes first.',
		testMass: 'This is the mass of the test, taken as the most. The label of the device comes first.',
		ukOrder: 'Fall arrest comes last. It is for where other means cannot be used.',
		ukTraining: 'The user, and enough others, must be trained, rescue included.',
		usConstructionTraining: 'A competent person trains. The employer keeps a signed record with name and date.',
		usGeneralTraining: 'A qualified person trains, before the work, in a way that the worker understands.',
		withoutAbsorber: 'This limit is for a line without an absorber.'
	},
	marks: {
		read: { name: 'Read', what: 'Read in a copy of the text itself.' },
		'read-secondary': { name: 'Read in a copy by others', what: 'Read in a text that quotes or sums it up, not in the text itself.' },
		memory: {
			name: 'From memory',
			what: 'Nobody has looked it up yet. It decides nothing until a competent person of your organisation confirms it.'
		}
	} as Readonly<Record<Mark, Explained>>,
	confidence: { high: 'quite sure', medium: 'fairly sure', low: 'not sure' } as Readonly<Record<Confidence, string>>,
	decidesNothing: 'decides nothing until confirmed',
	crossCheckOnly: 'Shown for comparison. No problem is set by it.',
	citation: ({ clause, title }: { clause: string; title: string }) => `${clause}, ${title}`,
	lookedAt: ({ when }: { when: string }) => `looked up ${when}`,
	subjects: {
		harness: 'Harness',
		connectors: 'Connectors',
		'component-strength': 'Strength of the parts',
		'lanyard-length': 'Lanyard length',
		'free-fall': 'Free fall',
		'arrest-force': 'Arrest force',
		deceleration: 'Deceleration distance',
		capacity: 'Mass',
		'anchorage-strength': 'Anchorage strength',
		'anchorage-independence': 'Anchorage on its own',
		'anchorage-height': 'Anchorage height',
		contact: 'Contact below',
		swing: 'Swing',
		edge: 'Edge',
		attachment: 'Attachment',
		rescue: 'Rescue',
		training: 'Training',
		'order-of-measures': 'Order of measures',
		numbers: 'Numbers',
		'trigger-height': 'From what height'
	} as Readonly<Record<Subject, string>>,
	quantities: {
		freeFall: 'free fall',
		peakForce: 'arrest force',
		decelerationDistance: 'deceleration distance',
		massAttached: 'mass on the harness',
		anchorageStrength: 'strength of the anchorage',
		strengthPerPerson: 'strength of the anchorage for each person',
		componentStrength: 'strength of the weakest part',
		lanyardLength: 'lanyard length',
		spare: 'spare clearance',
		anchorageAboveDRing: 'height of the anchorage above the D-ring',
		anchorageAboveShoulder: 'height of the anchorage above the shoulder',
		offset: 'offset',
		fallHeight: 'height above the lower level'
	} as Readonly<Record<QuantityName, string>>,
	/** A fact that a rule asks for, or asks not to be. */
	facts: {
		absorber: ({ asked }) => (asked === true ? 'the line has an energy absorber' : 'the line has no energy absorber'),
		makerTestedLongerFreeFall: ({ asked }) =>
			asked === true ? 'the maker has designed and tested it for a longer free fall' : 'the maker has not tested it for a longer free fall',
		usedAsInstructed: ({ asked }) => (asked === true ? 'used as the label says' : 'not used as the label says'),
		systemAdaptedToMass: ({ asked }) => (asked === true ? 'the system is adapted to the mass' : 'the system is not adapted to the mass'),
		factorTwoDesign: ({ asked }) =>
			asked === true ? 'a qualified person has designed the whole system' : 'no qualified person has designed the whole system',
		anchorageIndependent: ({ asked }) =>
			asked === true ? 'the anchorage carries nothing of the platform' : 'the anchorage carries the platform too',
		connectorsCompatible: ({ asked }) =>
			asked === true ? 'connectors that meet are made for each other' : 'connectors that meet are not made for each other',
		lineMeetsEdge: ({ asked }) => (asked === true ? 'the line meets an edge' : 'the line meets no edge'),
		lineMayBeCut: ({ asked }) => (asked === true ? 'the line may be cut' : 'nothing may cut the line'),
		rescueArranged: ({ asked }) => (asked === true ? 'rescue is arranged' : 'no rescue is arranged'),
		limitedFreeFall: ({ asked }) => (asked === true ? 'the free fall is limited' : 'the free fall is not limited'),
		harness: ({ asked }) => (asked === 'full-body' ? 'a full body harness is worn' : 'a body belt is worn'),
		attachment: ({ asked }) =>
			asked === 'back' ? 'attached at the back' : asked === 'above-head' ? 'attached above the head' : 'attached at the chest',
		workplace: ({ asked }) =>
			asked === 'scaffold'
				? 'on a scaffold'
				: asked === 'steel-erection'
					? 'in steel erection'
					: asked === 'permanent'
						? 'at a permanent work area'
						: 'at other work',
		persons: ({ asked }) => (asked === 1 ? 'one person on the anchorage' : `${String(asked)} persons on the anchorage`),
		absorberClass: ({ asked }) => `absorber of class ${String(asked)}`
	} as Readonly<Record<FactName, (p: { readonly asked: boolean | number | string }) => string>>,
	atMost: ({ quantity, amount }: { quantity: string; amount: string }) => `${quantity} at most ${amount}`,
	atLeast: ({ quantity, amount }: { quantity: string; amount: string }) => `${quantity} at least ${amount}`,
	below: ({ quantity, amount }: { quantity: string; amount: string }) => `${quantity} below ${amount}`,
	above: ({ quantity, amount }: { quantity: string; amount: string }) => `${quantity} above ${amount}`,
	times: ({ times, quantity }: { times: string; quantity: string }) => `${times} × the ${quantity}`,
	noContact: 'no contact with what is below',
	and: 'and',
	or: 'or',
	not: ({ what }: { what: string }) => `not: ${what}`,
	onlyIf: ({ condition }: { condition: string }) => `Only if ${condition}.`,
	from: ({ amount }: { amount: string }) => `The duty arises from ${amount}.`,
	fromAbove: ({ amount }: { amount: string }) => `The duty arises above ${amount}.`,
	tables: 'Rule tables',
	practice: 'Margins and stretch: practice, not law',
	classes: 'Classes of energy absorbers',
	superseded: 'no longer issued, still in use'
};
