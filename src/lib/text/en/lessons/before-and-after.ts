import type { LessonText } from '../../lesson-text.ts';

export const beforeAndAfter: LessonText = {
	title: 'Before and after',
	able: 'You can see on gear, people and places what must be put right before anybody hooks in.',
	ideas: [
		() => 'First ask how not to fall at all. A guardrail comes first. So does a line too short to reach the edge: that is restraint.',
		() => 'What looks strong is not yet an anchorage. A competent or qualified person says which one may be used, and by how many.',
		() => 'Look over your gear before each use. One cut, one open seam, one bent hook or a missing label is enough: out of use.',
		() => 'A harness works only as it was made to be worn: D-ring between the shoulder blades, straps flat, legs snug.',
		() => 'Connectors must fit what they hold. The gate is shut, and nothing presses on it or on the tip.',
		() => 'Twin legs are for moving on. One leg always holds. Park a spare leg on a tab that tears off: on a fixed ring it can bypass the absorber.',
		() => 'The plan for the rescue is made before the work. To hang still in a harness can harm within minutes.'
	],
	captions: {
		restraint: () => 'Look at each side of the roof. Where there is no railing, the line ends before the edge. Nobody can fall here, so nobody has to be caught.',
		place: () =>
			'Three things are wrong. A guardrail is no anchorage. Two people share what is meant for one. And the line runs over an edge that may cut it.',
		inspection: () => 'One seam has come open. One leg strap has a cut. Dust and scuffs by themselves do no harm. This harness goes out of use.',
		donning: () =>
			'Nothing is broken, but it is worn wrong. The lanyard is hooked to the belt, not to the D-ring. The leg straps are loose. Put it right first.',
		connectors: () => 'Three hook-ups are wrong. One hook hangs in another hook. One gate presses on a bar. One hook holds by its tip alone.',
		'legs-wrong': () =>
			'The one leg in use is clipped low. That makes a long free fall. And the spare leg hangs on a fixed ring at the hip. It can bypass the absorber.',
		'legs-right': () => 'Now it is right. Whoever moves past has both legs on. Whoever works uses one leg, clipped high. The spare leg is on a tab that tears off.',
		steel: () =>
			'A line was led round the beam and hooked back into itself. Only gear that is made for it may be tied back. And two absorbers are joined in a row.',
		rescue: () => 'Who helps here? Nobody stands by, and the way is blocked. A phone call is no rescue plan. Do not begin.'
	},
	cautions: [
		'One person to an anchorage, unless its approval names more.',
		'Gear that has stopped a fall is out of use. Only a competent person may clear it, and only if the maker allows that.',
		'Never join two absorbers in a row. They do not share the work, and no label holds for the pair.',
		'Tie back only with gear that is rated for it.',
		'Lines over edges need parts made for edges. They are not treated here.',
		'On the site you must do all this with your own hands, under somebody who knows it. A screen cannot stand in for that.'
	]
};
