/** One backdrop by itself, for a page that shows one site and should be there soon. */
import type { BackdropId } from '../model.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';

/** @returns what draws the site round a plan, loaded alone. */
export async function loadBackdrop(id: BackdropId): Promise<(frame: BackdropFrame) => Backdrop> {
	switch (id) {
		case 'bridge-bearing':
			return (await import('./bridge-bearing.ts')).bridgeBearing;
		case 'flat-roof-edge':
			return (await import('./flat-roof-edge.ts')).flatRoofEdge;
		case 'formwork-deck':
			return (await import('./formwork-deck.ts')).formworkDeck;
		case 'lift-shaft':
			return (await import('./lift-shaft.ts')).liftShaft;
		case 'loading-dock':
			return (await import('./loading-dock.ts')).loadingDock;
		case 'silo-top':
			return (await import('./silo-top.ts')).siloTop;
		case 'stage-grid':
			return (await import('./stage-grid.ts')).stageGrid;
		case 'tank-roof':
			return (await import('./tank-roof.ts')).tankRoof;
		case 'telecom-mast':
			return (await import('./telecom-mast.ts')).telecomMast;
		case 'turbine-nacelle':
			return (await import('./turbine-nacelle.ts')).turbineNacelle;
	}
}
