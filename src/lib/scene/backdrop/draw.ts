import type { BackdropId } from '../model.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { bridgeBearing } from './bridge-bearing.ts';
import { flatRoofEdge } from './flat-roof-edge.ts';
import { formworkDeck } from './formwork-deck.ts';
import { liftShaft } from './lift-shaft.ts';
import { loadingDock } from './loading-dock.ts';
import { siloTop } from './silo-top.ts';
import { stageGrid } from './stage-grid.ts';
import { tankRoof } from './tank-roof.ts';
import { telecomMast } from './telecom-mast.ts';
import { turbineNacelle } from './turbine-nacelle.ts';

export type { Backdrop, BackdropFrame } from './backdrop.ts';
export { isOverhead, REACHES, sightOf } from './backdrop.ts';

const BACKDROPS: Readonly<Record<BackdropId, (frame: BackdropFrame) => Backdrop>> = {
	'bridge-bearing': bridgeBearing,
	'flat-roof-edge': flatRoofEdge,
	'turbine-nacelle': turbineNacelle,
	'silo-top': siloTop,
	'loading-dock': loadingDock,
	'stage-grid': stageGrid,
	'telecom-mast': telecomMast,
	'tank-roof': tankRoof,
	'lift-shaft': liftShaft,
	'formwork-deck': formworkDeck
};

/** The site round a plan. */
export function drawBackdrop(frame: BackdropFrame): Backdrop {
	return BACKDROPS[frame.site.backdrop](frame);
}
