import type { BackdropId } from '../model.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { bridgeBearing } from './bridge-bearing.ts';

export type { Backdrop, BackdropFrame } from './backdrop.ts';
export { isOverhead, sightOf } from './backdrop.ts';

const BACKDROPS: Readonly<Record<BackdropId, (frame: BackdropFrame) => Backdrop>> = {
	'bridge-bearing': bridgeBearing,
	'flat-roof-edge': bridgeBearing,
	'turbine-nacelle': bridgeBearing,
	'silo-top': bridgeBearing,
	'loading-dock': bridgeBearing,
	'stage-grid': bridgeBearing,
	'telecom-mast': bridgeBearing,
	'tank-roof': bridgeBearing,
	'lift-shaft': bridgeBearing,
	'formwork-deck': bridgeBearing
};

/** The site round a plan. */
export function drawBackdrop(frame: BackdropFrame): Backdrop {
	return BACKDROPS[frame.site.backdrop](frame);
}
